import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decode } from './decode.ts';

const encoder = new TextEncoder();

describe('bytes to text', () => {
  test('takes away a byte order mark and makes all line ends one kind', () => {
    expect(decode('a', new Uint8Array([0xef, 0xbb, 0xbf, ...encoder.encode('a\r\nb\rc\n')]))).toEqual({
      text: 'a\nb\nc\n',
    });
  });

  test('gives back any text that has something in it', () => {
    const text = fc
      .string({ unit: 'grapheme', minLength: 1 })
      .filter(each => !/[\r\0\ufeff]/.test(each) && each.trim() !== '');
    fc.assert(
      fc.property(text, each => {
        expect(decode('a', encoder.encode(each))).toEqual({ text: each });
      }),
      { seed: 11 },
    );
  });

  /** Ill-formed sequences of the Unicode Standard, chapter 3, table 3-8 and around: overlong, surrogate, beyond U+10FFFF, cut off. */
  test.each([
    ['overlong slash', [0x61, 0xc0, 0xaf, 0x62], 1],
    ['surrogate', [0x61, 0x62, 0xed, 0xa0, 0x80], 2],
    ['beyond the last code point', [0xf4, 0x91, 0x92, 0x93], 0],
    ['letter cut off at the end', [0x61, 0xe2, 0x82], 1],
    ['letter cut off in the middle', [0x61, 0xe2, 0x82, 0x62], 1],
    ['lone continuation byte', [0x61, 0x80, 0x62], 1],
  ])('names the first byte that is wrong: %s', (_, bytes, at) => {
    const decoded = decode('a', new Uint8Array(bytes));
    expect(decoded).toMatchObject({
      problem: { rule: 'file-not-text', got: `byte 0x${bytes[at]!.toString(16)}` },
    });
  });
});
