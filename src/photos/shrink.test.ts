/** Originals made smaller in their place, read back by the library itself (sharp, on libvips). */

import sharp, { type Region, type Stats } from 'sharp';
import { describe, expect, test } from 'vitest';
import { photoEnds, photoFacts } from '../core/reading/photoFacts.ts';
import { shrunk, worthShrinking } from './shrink.ts';

/** A picture as a telephone writes it: lying on its side, in wide colors, with a place. Noise, so that it is large; its left third is red. */
async function fromPhone(width: number, height: number): Promise<Buffer> {
  const noise = await sharp({
    create: {
      width,
      height,
      channels: 3,
      background: '#777',
      noise: { type: 'gaussian', mean: 128, sigma: 40 },
    },
  })
    .png()
    .toBuffer();
  const red = await sharp({
    create: { width: Math.round(width / 3), height, channels: 3, background: '#c00' },
  })
    .png()
    .toBuffer();
  return sharp(noise)
    .composite([{ input: red, left: 0, top: 0 }])
    .withIccProfile('p3')
    .withExif({
      IFD0: { Make: 'Camera' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
    })
    .withMetadata({ orientation: 6 })
    .jpeg({ quality: 98 })
    .toBuffer();
}

/** Means of a part of a picture; the library counts the whole picture unless the part is cut out first. */
async function statsOf(bytes: Uint8Array, part: Region): Promise<Stats> {
  return sharp(await sharp(bytes).extract(part).png().toBuffer()).stats();
}

describe('a photograph of a telephone', () => {
  test('becomes smaller, upright, in its colors, and forgets where it was taken', async () => {
    const original = await fromPhone(4032, 3024);
    expect(original.length).toBeGreaterThan(worthShrinking);
    expect(photoFacts(photoEnds(original)).place).toBe(true);
    const result = await shrunk(original);
    if (!('bytes' in result)) throw new Error(result.kept);
    expect(result.bytes.length).toBeLessThan(original.length * 0.5);
    const facts = photoFacts(photoEnds(result.bytes));
    expect(facts).toMatchObject({
      kind: 'jpeg',
      whole: true,
      place: false,
      pixels: { width: 2160, height: 2880 },
    });
    const { orientation, icc } = await sharp(result.bytes).metadata();
    expect(orientation ?? 1).toBe(1);
    expect(icc?.length).toBe((await sharp(original).metadata()).icc?.length);
    // Turned by a quarter to the right (EXIF, CIPA DC-008: 6), what was on the left is on top.
    const top = await statsOf(result.bytes, { left: 900, top: 100, width: 200, height: 100 });
    const bottom = await statsOf(result.bytes, { left: 900, top: 2700, width: 200, height: 100 });
    expect(top.channels[0]!.mean - top.channels[1]!.mean).toBeGreaterThan(120);
    expect(Math.abs(bottom.channels[0]!.mean - bottom.channels[1]!.mean)).toBeLessThan(20);
    expect(await shrunk(result.bytes)).toHaveProperty('kept');
  });

  test('that is small, damaged or of another kind is left alone', async () => {
    expect(await shrunk(await fromPhone(600, 400))).toEqual({ kept: 'small enough' });
    const damaged = (await fromPhone(4032, 3024)).subarray(0, 3_000_000);
    await expect(shrunk(damaged)).rejects.toThrow();
  });
});
