import decodeQR from 'qr/decode.js';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { QUIET_MODULES, qrModules, qrPath, qrSide, qrSvg } from './qrImage.ts';
import { endCardModulePx, qrPng } from './qrPng.ts';

const addresses = [
  'https://kettlewise.example/go/3kfd/',
  'https://kettlewise.example/orchard/go/3kfd/',
  'https://example.org/l/0123',
  'HTTPS://EXAMPLE.ORG/L/0123',
  `https://a-rather-long-name-of-a-yard.example/below/a/path/videos/${'x'.repeat(64)}/`,
  'https://example.org/größe/',
];

/** An encoded picture as gray tones. */
async function pixelsOf(picture: Buffer): Promise<{ width: number; height: number; data: Uint8Array }> {
  const { data, info } = await sharp(picture)
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  expect(info.channels).toBe(1);
  return { width: info.width, height: info.height, data };
}

function decoded({ width, height, data }: { width: number; height: number; data: Uint8Array }): string {
  const rgb = new Uint8Array(data.length * 3);
  data.forEach((tone, at) => {
    rgb.fill(tone, 3 * at, 3 * at + 3);
  });
  return decodeQR({ width, height, data: rgb }, { timeLimit: 5000 });
}

describe('modules', () => {
  // Bytes that versions 1 to 6 hold at level M: ISO/IEC 18004, table 7; qrcode.com, "Information capacity and versions of the QR Code".
  // A version has 17 + 4 times its number modules to a side.
  test.each([
    [14, 21],
    [15, 25],
    [26, 25],
    [27, 29],
    [42, 29],
    [43, 33],
    [62, 33],
    [63, 37],
    [84, 37],
    [85, 41],
    [106, 41],
    [107, 45],
  ])('%i bytes take %i modules', (bytes, side) => {
    const modules = qrModules('a'.repeat(bytes));
    expect(modules).toHaveLength(side);
    expect(modules.every(row => row.length === side)).toBe(true);
    expect(qrSide(modules)).toBe(side + 8);
  });

  test.each(addresses)('of %s are the right way round and of level M', text => {
    const modules = qrModules(text);
    const side = modules.length;
    const version = (side - 17) / 4;
    const isFinder = (top: number, left: number) =>
      [0, 1, 2, 3, 4, 5, 6].every(y =>
        [0, 1, 2, 3, 4, 5, 6].every(x => {
          const ring = Math.max(Math.abs(x - 3), Math.abs(y - 3));
          return modules[top + y]![left + x] === (ring !== 2);
        }),
      );
    // Three finder patterns, and the module beside the lower one that is always dark: ISO/IEC 18004, 6.3.3 and 7.9.1
    // (numbers of sections from memory).
    expect([
      isFinder(0, 0),
      isFinder(0, side - 7),
      isFinder(side - 7, 0),
      isFinder(side - 7, side - 7),
    ]).toEqual([true, true, true, false]);
    expect(modules[4 * version + 9]![8]).toBe(true);
    // The level is the first two bits of the format, from the left in row 8; M is 00, seen through the mask that starts with 10: 7.9.1.
    expect(modules[8]!.slice(0, 2)).toEqual([true, false]);
  });
});

describe('the outline', () => {
  test('fills the dark modules and no other', () => {
    for (const text of addresses) {
      const modules = qrModules(text);
      const filled = modules.map(row => row.map(() => 0));
      let [x, y] = [0, 0];
      const boxes = [...qrPath(modules).matchAll(/m(-?\d+) (-?\d+)h(\d+)v1h-(\d+)z/g)];
      expect(boxes.map(([box]) => box).join('')).toBe(qrPath(modules));
      for (const [, dx, dy, length, back] of boxes) {
        expect(back).toBe(length);
        [x, y] = [x + Number(dx), y + Number(dy)];
        for (let at = x; at < x + Number(length); at += 1)
          filled[y - QUIET_MODULES]![at - QUIET_MODULES]! += 1;
      }
      expect(filled.map(row => row.map(Boolean))).toEqual(modules);
      expect(Math.max(...filled.flat())).toBe(1);
    }
  });
});

describe('pictures', () => {
  test.each(addresses)('of %s are read as that address by another library', async text => {
    const modulePx = endCardModulePx(text);
    expect(decoded(await pixelsOf(await qrPng(text, modulePx)))).toBe(text);
    expect(
      decoded(
        await pixelsOf(
          await sharp(Buffer.from(qrSvg(text, modulePx)))
            .png()
            .toBuffer(),
        ),
      ),
    ).toBe(text);
  });

  test.each(addresses)('of %s have whole modules, two tones and four white modules around', async text => {
    const modulePx = endCardModulePx(text);
    const modules = qrModules(text);
    const side = qrSide(modules);
    const { width, height, data } = await pixelsOf(await qrPng(text, modulePx));
    expect([width, height]).toEqual([side * modulePx, side * modulePx]);
    // Fits into half the height of a picture of 1080 lines, and is no smaller than it must be.
    expect(width).toBeLessThanOrEqual(540);
    expect(side * (modulePx + 1)).toBeGreaterThan(540);
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        const dark =
          modules[Math.floor(y / modulePx) - QUIET_MODULES]?.[Math.floor(x / modulePx) - QUIET_MODULES];
        if (data[y * width + x] !== (dark ? 0 : 255))
          throw new Error(`pixel ${x} ${y} is ${data[y * width + x]}`);
      }
    }
  });

  test('are the same bytes each time', async () => {
    const [text] = addresses as [string];
    expect(await qrPng(text, 7)).toEqual(await qrPng(text, 7));
    expect(qrSvg(text, 7)).toBe(qrSvg(text, 7));
  });
});
