import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundings } from '../../../tests/arbitraries.ts';
import { nearestRung, type RoundingLine, roundPrice, rungValue, type Series } from './ladder.ts';

const series = fc.constantFrom<Series>('R5', 'R10', 'R20');
const rungs = fc.integer({ min: -40, max: 120 });

describe('rungs', () => {
  it('rise', () => {
    fc.assert(
      fc.property(series, rungs, (name, rung) => {
        expect(rungValue(name, rung + 1)).toBeGreaterThan(rungValue(name, rung));
      }),
      { seed: 21 },
    );
  });

  it('are their own nearest rung', () => {
    fc.assert(
      fc.property(series, rungs, (name, rung) => {
        expect(nearestRung(name, rungValue(name, rung))).toBe(rung);
      }),
      { seed: 22 },
    );
  });

  it('are nearest by ratio: no other rung is nearer', () => {
    fc.assert(
      fc.property(series, fc.double({ min: 0.01, max: 1e6, noNaN: true }), (name, amount) => {
        const distance = (rung: number) => Math.abs(Math.log(rungValue(name, rung) / amount));
        const nearest = nearestRung(name, amount);
        expect(distance(nearest)).toBeLessThanOrEqual(
          Math.min(distance(nearest - 1), distance(nearest + 1)) + 1e-12,
        );
      }),
      { seed: 23 },
    );
  });

  it.each([0, -3, Number.NaN, Number.POSITIVE_INFINITY])('there is none for %d', amount => {
    expect(() => nearestRung('R10', amount)).toThrow(RangeError);
  });
});

describe('rounding of prices', () => {
  const lines: RoundingLine[] = [
    { below: 40, to: 1 },
    { below: 150, to: 5 },
    { below: null, to: 10 },
  ];

  it.each([
    [31.5, 32],
    [39.7, 40],
    [42, 40],
    [43, 45],
    [148, 150],
    [151, 150],
    [155, 160],
    [0.2, 1],
  ])('%d becomes %d', (amount, rounded) => {
    expect(roundPrice(lines, amount)).toBe(rounded);
  });

  it('does not step down where one line ends and the next begins', () => {
    const crossed: RoundingLine[] = [
      { below: 42, to: 1 },
      { below: null, to: 10 },
    ];
    expect(roundPrice(crossed, 41.9)).toBe(42);
    expect(roundPrice(crossed, 42.1)).toBe(42);
    expect(roundPrice(crossed, 45)).toBe(50);
  });

  it('never falls when the price rises, and is never zero', () => {
    const price = fc.double({ min: 0.01, max: 2000, noNaN: true });
    fc.assert(
      fc.property(roundings, price, price, (rounding, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(roundPrice(rounding, high)).toBeGreaterThanOrEqual(roundPrice(rounding, low));
        expect(roundPrice(rounding, low)).toBeGreaterThan(0);
      }),
      { seed: 24, numRuns: 500 },
    );
  });
});
