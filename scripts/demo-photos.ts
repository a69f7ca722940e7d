/**
 * Draws the pictures of the demonstration yard, whose trees are invented: plain drawings of our own in place of photographs.
 * The same drawings come out byte for byte on every run with the same version of sharp.
 *
 *   node scripts/demo-photos.ts --out content/photos
 */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { randomFromText } from '../src/core/random.ts';
import { writeWhole } from '../src/files.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { cutFig, cutPomegranate, pearFig, roundFig } from './demo-photos/fruits.ts';
import { cutPersimmon } from './demo-photos/persimmon.ts';
import { airLayer, bareRootBundle, pottedWhip } from './demo-photos/trees.ts';
import { jujubeTwig, mulberryTwig } from './demo-photos/twigs.ts';

type Draw = (random: ReturnType<typeof randomFromText>) => string;

const amberFig = {
  skin: ['#f3e08a', '#d8bd52', '#9a8430'],
  pith: '#fbf3d6',
  flesh: ['#f6c77a', '#dd9440', '#a8611f'],
  seed: '#f4dfa0',
} as const;

const redFig = {
  skin: ['#8d6f93', '#5c3e66', '#352340'],
  pith: '#f6ead2',
  flesh: ['#ea7a6c', '#bf2f3a', '#7a1528'],
  seed: '#f2d28c',
} as const;

const drawings: Record<string, Draw> = {
  'air-layer': airLayer,
  'bare-root-bundle': bareRootBundle,
  'fig-cut-amber': random => cutFig(amberFig, roundFig, random),
  'fig-cut-red': random => cutFig(redFig, pearFig, random),
  'jujube-twig': jujubeTwig,
  'mulberry-twig': mulberryTwig,
  'persimmon-cut': cutPersimmon,
  'pomegranate-cut': cutPomegranate,
  'potted-whip': pottedWhip,
};

const help = `Draws the pictures of the demonstration yard.

  node scripts/demo-photos.ts --out content/photos

  --replace     overwrite pictures of these names that look different
`;

async function bytesOf(path: string): Promise<Buffer | null> {
  return readFile(path).catch((problem: NodeJS.ErrnoException) => {
    if (problem.code === 'ENOENT') return null;
    throw problem;
  });
}

async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, help, {
    out: { type: 'string', default: 'content/photos' },
    replace: { type: 'boolean', default: false },
  });
  const pictures: { file: string; bytes: Buffer }[] = [];
  const others: string[] = [];
  for (const [name, draw] of Object.entries(drawings)) {
    const file = join(values.out, `${name}.jpg`);
    const bytes = await sharp(Buffer.from(draw(randomFromText(name))))
      .flatten({ background: '#f5f0e4' })
      .jpeg({ quality: 82, mozjpeg: true })
      .toBuffer();
    pictures.push({ file, bytes });
    const there = await bytesOf(file);
    if (there !== null && !there.equals(bytes)) others.push(file);
  }
  if (others.length > 0 && !values.replace) {
    throw new UsageError(
      `nothing was written, since ${others.join(', ')} would be overwritten; add --replace if that is meant.`,
    );
  }
  for (const { file, bytes } of pictures) {
    await writeWhole(file, bytes);
    process.stdout.write(`${file} ${Math.round(bytes.length / 1000)} kB\n`);
  }
  return 0;
}

await runIfMain(import.meta, main);
