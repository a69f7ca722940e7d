/** Making the copies of photographs against the library alone, called once for each copy: same list, settings and concurrency. */

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { randomFromText } from '../../src/core/random.ts';
import { encodersFor } from '../../src/photos/copies.ts';
import { copySizes, formats } from '../../src/photos/settings.ts';
import { inTurns } from '../../src/turns.ts';
import { measured, median, ratioInWords, type Usage } from './measure.ts';

/** Pixels of a telephone's picture. */
const original = { width: 4000, height: 3000 };

/** A picture with soft shapes and grain, since a plain color is encoded far faster than any photograph. */
async function drawPhoto(file: string, seed: string): Promise<void> {
  const random = randomFromText(seed);
  const upTo = (most: number) => random.uniform() * most;
  const { width, height } = original;
  const shapes = Array.from({ length: 60 }, () => {
    const [x, y, r] = [upTo(width), upTo(height), 100 + upTo(500)];
    const color = `hsl(${upTo(360)} 60% ${20 + upTo(60)}%)`;
    return `<circle cx="${x}" cy="${y}" r="${r}" fill="${color}" opacity="0.6"/>`;
  });
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${shapes.join('')}</svg>`;
  await sharp({
    create: {
      width,
      height,
      channels: 3,
      background: '#687',
      noise: { type: 'gaussian', mean: 128, sigma: 12 },
    },
  })
    .composite([{ input: Buffer.from(drawing) }])
    .withMetadata({ orientation: 6 })
    .jpeg({ quality: 88 })
    .toFile(file);
}

/** Runs one way of making the copies in a process of its own, and measures it. */
function runOnce(way: 'ours' | 'plain', folder: string, cwd: string): Usage & { encoded: number } {
  const counted = join(folder, 'encoded.txt');
  const usage = measured(import.meta.filename, [way, counted], cwd, { CONTENT_DIR: folder });
  return { ...usage, encoded: Number(readFileSync(counted, 'utf8')) };
}

export interface PhotoBench {
  /** Usage of paired runs without kept copies. */
  pairs: { ours: Usage; plain: Usage }[];
  /** Copies encoded in the runs after, when nothing has changed. */
  encodedWarm: number;
  warm: Usage;
}

/** Throughput is the reverse of time: 0.85 of it is a time of 1 / 0.85 times that of the library alone. */
export function benchPhotos(photos: number, repeats: number): PhotoBench {
  const folder = mkdtempSync(join(tmpdir(), 'leafdrop-photo-bench-'));
  try {
    mkdirSync(join(folder, 'photos'));
    const drawn = spawnSync(process.execPath, [import.meta.filename, 'draw', folder, String(photos)], {
      encoding: 'utf8',
    });
    if (drawn.status !== 0) throw new Error(drawn.stderr);
    const pairs: PhotoBench['pairs'] = [];
    let encodedWarm = 0;
    let warm: Usage | undefined;
    for (let run = 0; run < repeats; run += 1) {
      // The kept copies are in the folder a process starts in.
      rmSync(join(folder, '.cache'), { recursive: true, force: true });
      const [first, second] = run % 2 === 0 ? (['ours', 'plain'] as const) : (['plain', 'ours'] as const);
      const ran = { [first]: runOnce(first, folder, folder), [second]: runOnce(second, folder, folder) };
      pairs.push({ ours: ran.ours!, plain: ran.plain! });
      if (ran.ours!.encoded === 0 || ran.ours!.encoded !== ran.plain!.encoded)
        throw new Error(`${ran.ours!.encoded} copies against ${ran.plain!.encoded}: not the same work`);
      const again = runOnce('ours', folder, folder);
      encodedWarm += again.encoded;
      warm = again;
    }
    return { pairs, encodedWarm, warm: warm! };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The lines of the report. */
export function photoBenchLines({ pairs, encodedWarm, warm }: PhotoBench): string[] {
  const throughput = (of: (usage: Usage) => number) =>
    ratioInWords(pairs.map(({ ours, plain }) => ({ ours: of(plain), plain: of(ours) })));
  const seconds = median(pairs.map(({ ours }) => ours.cpuSeconds));
  const peak = Math.max(...pairs.map(({ ours }) => ours.peakMegabytes));
  const plainPeak = Math.max(...pairs.map(({ plain }) => plain.peakMegabytes));
  return [
    `photos, throughput against the library alone, wall: ${throughput(usage => usage.wallSeconds)}`,
    `photos, throughput against the library alone, CPU: ${throughput(usage => usage.cpuSeconds)}; ours ${seconds.toFixed(1)} s`,
    `photos, peak memory: ${peak.toFixed(0)} MB; the library alone ${plainPeak.toFixed(0)} MB`,
    `photos, copies encoded when nothing changed: ${encodedWarm}; ${warm.cpuSeconds.toFixed(1)} s CPU`,
  ];
}

async function ours(files: readonly string[]): Promise<number> {
  const { encodedCopies, publishedPhotos } = await import('../../src/photos.ts');
  await publishedPhotos(files);
  return encodedCopies();
}

/** Every copy from the original by the library's own pipeline, as its manual shows it. */
async function plain(files: readonly string[], folder: string): Promise<number> {
  const turn = inTurns(encodersFor(availableParallelism()));
  const out = join(folder, '.cache/plain');
  mkdirSync(out, { recursive: true });
  let encoded = 0;
  const make = async (file: string, width: number, format: keyof typeof formats) => {
    const { encoder, options } = formats[format];
    await turn(() =>
      sharp(join(folder, 'photos', file))
        .autoOrient()
        .resize({ width })
        .toFormat(encoder, options)
        .toFile(join(out, `${file}-${width}.${format}`)),
    );
    encoded += 1;
  };
  const upright = { width: original.height, height: original.width };
  const widths = copySizes(upright).map(({ width }) => width);
  await Promise.all(
    files.flatMap(file => [
      ...widths.flatMap(width => [make(file, width, 'avif'), make(file, width, 'webp')]),
      make(file, widths[1]!, 'jpg'),
    ]),
  );
  return encoded;
}

async function main([way, where = '', count = '0']: string[]): Promise<void> {
  if (way === 'draw') {
    for (let n = 0; n < Number(count); n += 1)
      await drawPhoto(join(where, 'photos', `${n}.jpg`), `photo ${n}`);
    return;
  }
  const folder = resolve(process.env.CONTENT_DIR!);
  const files = readdirSync(join(folder, 'photos')).sort();
  writeFileSync(where, String(way === 'ours' ? await ours(files) : await plain(files, folder)));
}

if (process.argv[1] === import.meta.filename) await main(process.argv.slice(2));
