/**
 * Draws the pictures of the demonstration yard, whose trees are invented: plain drawings of our own in place of photographs.
 * The same drawings come out byte for byte on every run with the same version of sharp.
 *
 *   node scripts/demo-photos.ts --out content/photos
 */

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import sharp from 'sharp';
import { randomFromText } from '../src/core/random.ts';
import { cutFig, cutPomegranate } from './demo-photos/fruits.ts';
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
  'fig-cut-amber': random => cutFig(amberFig, random),
  'fig-cut-red': random => cutFig(redFig, random),
  'jujube-twig': jujubeTwig,
  'mulberry-twig': mulberryTwig,
  'persimmon-cut': cutPersimmon,
  'pomegranate-cut': cutPomegranate,
  'potted-whip': pottedWhip,
};

const { values } = parseArgs({ options: { out: { type: 'string', default: 'content/photos' } } });
mkdirSync(values.out, { recursive: true });
for (const [name, draw] of Object.entries(drawings)) {
  const file = join(values.out, `${name}.jpg`);
  const { size } = await sharp(Buffer.from(draw(randomFromText(name))))
    .flatten({ background: '#f5f0e4' })
    .jpeg({ quality: 82, mozjpeg: true })
    .toFile(file);
  process.stdout.write(`${file} ${Math.round(size / 1000)} kB\n`);
}
