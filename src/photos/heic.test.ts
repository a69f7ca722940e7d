/**
 * Photographs in HEIC. The fixture was encoded by libheif 1.15 and x265 from four squares of our own in Display P3 (red, green, blue, yellow),
 * lying on its side with the box `irot` (ISO/IEC 23008-12) and EXIF orientation 6 beside it, as telephones write both, and with a place.
 */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { photoEnds, photoFacts } from '../core/reading/photoFacts.ts';
import { inTurns } from '../turns.ts';
import { makeCopies } from './copies.ts';
import { openable, profileOf } from './heic.ts';

const telephone = readFileSync(join(import.meta.dirname, '../../tests/fixtures/photos/telephone.heic'));

async function colorAt(bytes: Uint8Array, left: number, top: number): Promise<number[]> {
  const { data } = await sharp(bytes)
    .extract({ left, top, width: 1, height: 1 })
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return [...data];
}

describe('a photograph in HEIC', () => {
  it('is known with its size and its place', () => {
    expect(photoFacts(photoEnds(telephone))).toMatchObject({
      kind: 'heic',
      whole: true,
      place: true,
      pixels: { width: 96, height: 64 },
    });
  });

  it('becomes upright copies in sRGB that show the colors drawn, and nothing the camera wrote', async () => {
    const { copies } = await makeCopies(telephone, inTurns(1));
    expect(copies.map(({ format }) => format).sort()).toEqual(['avif', 'jpg', 'webp']);
    for (const { bytes, width, height } of copies) {
      expect([width, height]).toEqual([64, 96]);
      const { exif, xmp, icc } = await sharp(bytes).metadata();
      expect([exif, xmp, icc]).toEqual([undefined, undefined, undefined]);
      // Turned clockwise: the blue square of the lower left comes to the upper left. Lossy codecs move a channel by some steps.
      const drawn: [number, number, number[]][] = [
        [5, 5, [30, 40, 200]],
        [58, 5, [200, 30, 30]],
        [5, 90, [220, 200, 40]],
        [58, 90, [30, 160, 40]],
      ];
      for (const [left, top, color] of drawn) {
        const found = await colorAt(bytes, left, top);
        found.forEach((channel, i) => {
          expect(Math.abs(channel - (color[i] as number)), `${left},${top}: ${found}`).toBeLessThan(16);
        });
      }
    }
  });

  it('keeps the profile of its colors on the way', async () => {
    const profile = profileOf(telephone);
    expect(Buffer.from(profile ?? []).includes('acsp')).toBe(true);
    const { icc } = await sharp(await openable(telephone)).metadata();
    expect(Buffer.compare(icc as Buffer, Buffer.from(profile ?? []))).toBe(0);
  });

  it.each([100, 900, 1300])('that ends after %i bytes is refused in words', async size => {
    await expect(openable(telephone.subarray(0, size))).rejects.toThrow(/\w/);
  });
});

it('other photographs are opened as they are', async () => {
  const png = await sharp({ create: { width: 3, height: 2, channels: 3, background: '#123456' } })
    .png()
    .toBuffer();
  expect(await openable(png)).toBe(png);
  expect(profileOf(png)).toBe(null);
});
