import { describe, expect, it } from 'vitest';
import { day } from '../days.ts';
import { leafFallFrom, midsummerAfter, midsummerBefore, midwinterOf } from './seasons.ts';

describe('turning points north of the equator', () => {
  it.each([
    ['2026-07-24', '2026-07-24', '2027-07-24', '2027-01-01'],
    ['2026-07-23', '2025-07-24', '2026-07-24', '2026-01-01'],
    ['2026-12-31', '2026-07-24', '2027-07-24', '2027-01-01'],
    ['2027-01-01', '2026-07-24', '2027-07-24', '2027-01-01'],
  ])('%s', (of, before, after, midwinter) => {
    expect(midsummerBefore(day(of), false)).toBe(before);
    expect(midsummerAfter(day(of), false)).toBe(after);
    expect(midwinterOf(day(of), false)).toBe(midwinter);
  });

  it('look for leaf fall from the day leaves were seen in autumn, from midsummer for leaves seen in spring', () => {
    expect(leafFallFrom(day('2026-09-20'), false)).toBe('2026-09-20');
    expect(leafFallFrom(day('2026-05-10'), false)).toBe('2026-07-24');
    expect(leafFallFrom(day('2027-01-20'), false)).toBe('2027-07-24');
  });
});

describe('turning points south of the equator', () => {
  it.each([
    ['2026-01-24', '2026-01-24', '2027-01-24', '2026-07-01'],
    ['2026-06-30', '2026-01-24', '2027-01-24', '2026-07-01'],
    ['2026-12-31', '2026-01-24', '2027-01-24', '2026-07-01'],
    ['2027-01-23', '2026-01-24', '2027-01-24', '2026-07-01'],
  ])('%s', (of, before, after, midwinter) => {
    expect(midsummerBefore(day(of), true)).toBe(before);
    expect(midsummerAfter(day(of), true)).toBe(after);
    expect(midwinterOf(day(of), true)).toBe(midwinter);
  });

  it('look for leaf fall half a year from the north', () => {
    expect(leafFallFrom(day('2026-04-10'), true)).toBe('2026-04-10');
    expect(leafFallFrom(day('2026-11-10'), true)).toBe('2027-01-24');
  });
});
