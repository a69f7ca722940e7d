import { describe, expect, it } from 'vitest';
import type { ClimateSummary } from '../../core/climate/summary.ts';
import type { RipeningVerdict } from '../../core/match/answers.ts';
import { alongAxis, barParts, cropBars, freezeFreeParts } from './seasonBar.ts';

const north = 40;
const south = -35;

describe('bars of a season', () => {
  it('count days from January, south of the equator from July', () => {
    expect(alongAxis(1, north)).toBe(0);
    expect(alongAxis(365, north)).toBe(364);
    // July 1 is day 182 of a year of 365 days.
    expect(alongAxis(182, south)).toBe(0);
    expect(alongAxis(181, south)).toBe(364);
  });

  it('are one piece, or two when they run over the end of the axis', () => {
    expect(barParts(100, 120, north)).toEqual([{ from: 99, width: 21 }]);
    expect(barParts(350, 10, north)).toEqual([
      { from: 349, width: 16 },
      { from: 0, width: 10 },
    ]);
    expect(barParts(350, 10, south)).toHaveLength(1);
  });

  const odds = (share: number) => ({
    share,
    word: share >= 0.8 ? ('reliable' as const) : ('not-outdoors' as const),
    dates: { p10: 230, p50: 240, p90: 250 },
  });
  const crop = (over: Partial<RipeningVerdict>): RipeningVerdict => ({
    crop: 'main',
    blocked: null,
    because: [],
    headStart: odds(0.9),
    ...odds(0.9),
    ...over,
  });

  it('show a crop outdoors, else with a head start, else not at all', () => {
    const outdoors = { parts: [{ from: 229, width: 21 }], middle: 239 };
    expect(cropBars([crop({})], north)).toEqual([{ ...outdoors, headStart: false }]);
    expect(cropBars([crop(odds(0.1))], north)).toEqual([{ ...outdoors, headStart: true }]);
    expect(cropBars([crop({ ...odds(0.1), headStart: odds(0.1) })], north)).toEqual([]);
    expect(cropBars([crop({ blocked: 'needs-wasp' })], north)).toEqual([]);
  });

  it('tint the days between freezes, and the whole year where most years have none', () => {
    const freeze = (last: string | null, first: string | null) =>
      ({
        freeze: { '32F': { answer: { last: { p50: last }, first: { p50: first } } } },
      }) as unknown as ClimateSummary;
    expect(freezeFreeParts(freeze('04-11', '10-28'), north)).toEqual([{ from: 100, width: 201 }]);
    expect(freezeFreeParts(freeze(null, null), north)).toEqual([{ from: 0, width: 365 }]);
  });
});
