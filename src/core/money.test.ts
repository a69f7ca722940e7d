import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currencyDecimals, fromMajor, parseAmount, priceInWords } from './money.ts';

describe('amounts', () => {
  it.each([
    ['45', 'USD', 4500],
    ['45.5', 'USD', 4550],
    ['45.50', 'USD', 4550],
    ['1.10', 'EUR', 110],
    ['4500', 'JPY', 4500],
    ['1.234', 'KWD', 1234],
    ['0', 'USD', 0],
  ])('%s %s is %i', (text, currency, minor) => {
    expect(parseAmount(text, currency)).toBe(minor);
  });

  it.each([
    ['45.505', 'USD'],
    ['1.5', 'JPY'],
    ['-5', 'USD'],
    ['5,00', 'USD'],
    ['$5', 'USD'],
    ['', 'USD'],
    ['1e3', 'USD'],
    ['.5', 'USD'],
  ])('refuses %j in %s', (text, currency) => {
    expect(parseAmount(text, currency)).toBeNull();
  });

  /** Decimals of ISO 4217: the list of currencies of the maintenance agency. */
  it.each([
    ['USD', 2],
    ['EUR', 2],
    ['JPY', 0],
    ['KWD', 3],
  ])('%s has %i decimals', (currency, decimals) => {
    expect(currencyDecimals(currency)).toBe(decimals);
  });

  it('refuses a malformed code', () => {
    expect(() => currencyDecimals('DOLLAR')).toThrow(RangeError);
  });

  it('reads back every amount it can be written as', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999_999 }), minor => {
        const text = `${Math.floor(minor / 100)}.${String(minor % 100).padStart(2, '0')}`;
        expect(parseAmount(text, 'USD')).toBe(minor);
      }),
      { seed: 3 },
    );
  });

  it('turns major units into whole minor ones', () => {
    expect(fromMajor(31.5, 'USD')).toBe(3150);
    expect(fromMajor(0.1 + 0.2, 'USD')).toBe(30);
  });
});

describe('prices in words', () => {
  it.each([
    [4500, 'USD', '$45'],
    [4550, 'USD', '$45.50'],
    [450_000, 'USD', '$4,500'],
    [4500, 'JPY', '¥4,500'],
  ])('%i %s is %s', (minor, currency, words) => {
    expect(priceInWords({ minor, currency })).toBe(words);
  });
});
