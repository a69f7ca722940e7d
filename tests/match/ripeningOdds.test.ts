/** The ripening of one year, on years made by hand in which every day is known. */
import { describe, expect, it } from 'vitest';
import type { WeatherYears } from '../../src/core/climate/weatherYears.ts';
import { type HeatCase, ripeningOdds, type SeasonRules } from '../../src/core/match/ripeningOdds.ts';
import { killingFreezeAt } from '../../src/core/phenology/endOfSeason.ts';

/** Two seasons of days alike, but for some nights; index 0 of the growing year is January 1, which lies 161 days into the series. */
function yearsOf(
  meanC: number,
  nights: readonly (readonly [index: number, tC: number])[] = [],
): WeatherYears {
  const days = 365 * 2;
  const tminC = new Float32Array(days).fill(meanC - 5);
  for (const [index, tC] of nights) tminC[161 + index] = tC;
  return {
    lat: 40,
    firstDoy: 205,
    count: 2,
    tminC,
    tmaxC: new Float32Array(days).fill(meanC + 5),
    spreadEstimated: false,
  };
}

const rules: SeasonRules = { heatFrom: 59, budbreakHeat: 100, leafDamageC: -1, end: killingFreezeAt(-2.5) };
/** 10 degree days a day above 8 C. */
const warm = 18;

function odds(
  years: WeatherYears,
  need: HeatCase['needs'][number],
  over: Partial<HeatCase> = {},
  fifths: readonly number[] = [0],
) {
  const [found] = ripeningOdds(years, 8, 36, [{ rules, needs: [need], headStart: null, ...over }], fifths);
  return found!;
}
const heat = (value: number, leastDays = 0) => ({
  by: 'heat' as const,
  heat: value,
  budbreakHeat: 100,
  leastDays,
});
const bloom = { by: 'bloom' as const, bloomHeat: 400, days: 100, leastHeat: 300 };
const day = (index: number) => index + 1;

describe('a crop timed by heat', () => {
  it('is ripe on the day that completes its heat from March 1', () => {
    expect(odds(yearsOf(warm), heat(1000)).outdoors[0]!.dates!.p50).toBe(day(59 + 99));
    expect(odds(yearsOf(warm), heat(1000)).budbreak!.p50).toBe(day(59 + 9));
  });

  it('counts again from budbreak after a freeze that costs the shoots', () => {
    // Ten degree days less on the day of the freeze and none lost otherwise: 900 from day 101 on, 90 days.
    expect(odds(yearsOf(warm, [[100, -1]]), heat(1000)).outdoors[0]!.dates!.p50).toBe(day(101 + 89));
    expect(odds(yearsOf(warm, [[100, -1]]), heat(1000)).start!.p50).toBe(day(101));
    const harmless = odds(yearsOf(warm, [[60, -1]]), heat(1000)).outdoors[0]!.dates!.p50;
    expect(Math.abs(harmless - day(59 + 99))).toBeLessThanOrEqual(1);
  });

  it('is ripe no sooner than its least days from budbreak, or from the start after a freeze', () => {
    // Budbreak on day 68; the heat of 1,000 is there on day 158, 90 days after it.
    const ripe = (leastDays: number, ...nights: (readonly [number, number])[]) =>
      odds(yearsOf(warm, nights), heat(1000, leastDays)).outdoors[0]!.dates?.p50;
    expect([90, 91, 120].map(days => ripe(days))).toEqual([day(158), day(159), day(188)]);
    expect([89, 91].map(days => ripe(days, [100, -1]))).toEqual([day(190), day(192)]);
    expect(ripe(400)).toBeUndefined();
    const found = odds(yearsOf(warm), heat(1000, 91), {}, [-1, 0, 1]).outdoors[0]!;
    expect(found.dates).toEqual({ p10: day(159), p50: day(159), p90: day(59 + 107) });
  });

  it('is not ripe when the season ends on or before that day', () => {
    const ripeOn = 59 + 199;
    const before = odds(yearsOf(warm, [[ripeOn, -3]]), heat(2000)).outdoors[0]!;
    expect([before.share, before.sharpShare, before.dates]).toEqual([0, 0, null]);
    const after = odds(yearsOf(warm, [[ripeOn + 1, -3]]), heat(2000)).outdoors[0]!;
    expect([after.share, after.sharpShare, after.dates?.p50]).toEqual([1, 1, day(ripeOn)]);
    expect(odds(yearsOf(warm, [[ripeOn, -3]]), heat(2000)).end!.p50).toBe(day(ripeOn));
  });

  it('counts trees that ask for a twelfth more or less', () => {
    const found = odds(yearsOf(warm), heat(1000), {}, [-1, 0, 1]).outdoors[0]!;
    expect(found.dates).toEqual({ p10: day(59 + 91), p50: day(59 + 99), p90: day(59 + 107) });
    // The season ends between the tree at its word and the one that asks for 8 % more.
    const cut = odds(yearsOf(warm, [[59 + 203, -3]]), heat(2000), {}, [-1, 0, 1]).outdoors[0]!;
    expect(cut.share).toBeCloseTo(2 / 3, 9);
    expect(cut.sharpShare).toBe(1);
  });
});

describe('a crop timed by bloom', () => {
  // In bloom on day 98, 46 days before May 25 (144): ripe on 144 + 100 - 0.6 x 46 = 216.
  it('is ripe after its days from bloom', () => {
    const found = odds(yearsOf(warm), bloom);
    expect(found.bloom!.p50).toBe(day(98));
    expect(found.outdoors[0]!.dates!.p50).toBe(day(216));
    expect(odds(yearsOf(warm), heat(900)).bloom).toBeNull();
  });

  it('waits for its least heat', () => {
    expect(odds(yearsOf(warm), { ...bloom, leastHeat: 1500 }).outdoors[0]!.dates!.p50).toBe(day(98 + 149));
    expect(odds(yearsOf(warm), { ...bloom, leastHeat: 9000 }).outdoors[0]!.dates).toBeNull();
  });

  it('counts trees that take a week more or less', () => {
    const found = odds(yearsOf(warm), bloom, {}, [-1, 0, 1]).outdoors[0]!;
    expect(found.dates).toEqual({ p10: day(208), p50: day(216), p90: day(224) });
  });
});

describe('a tree with a head start', () => {
  const headStart = { moveOut: 120, credit: 400 };
  const late = yearsOf(warm, [[119, -1]]);

  it('ripens as much sooner as the heat behind it is worth', () => {
    const found = odds(late, heat(1000), { headStart });
    expect(found.outdoors[0]!.dates!.p50).toBe(day(120 + 89));
    // 100 to budbreak and 400 are behind it: 500 to go from the day it moves out.
    expect(found.headStart[0]!.dates!.p50).toBe(day(120 + 49));
    expect(found.headStart[0]!.sharpShare).toBe(1);
  });

  it('is no worse off than one without, and none when it moves out after the season', () => {
    const early = odds(yearsOf(warm), heat(1000), { headStart }).headStart[0]!.dates!.p50;
    // 500 to go from day 120 on: later than the tree outdoors, which is ripe on day 158.
    expect(early).toBe(day(59 + 99));
    const over = odds(yearsOf(warm, [[250, -3]]), heat(2500), { headStart: { moveOut: 250, credit: 9000 } });
    expect(over.headStart[0]!.share).toBe(0);
    expect(over.headStart[0]!.sharpShare).toBe(0);
    const just = odds(yearsOf(warm, [[251, -3]]), heat(2500), { headStart: { moveOut: 250, credit: 9000 } });
    expect(just.headStart[0]!.share).toBe(1);
  });
});

it('tells no date for what happens in under one year in ten', () => {
  const found = odds(yearsOf(warm, [[59 + 190, -3]]), heat(2000), {}, [
    -1.3,
    ...new Array<number>(10).fill(1),
  ]);
  expect(found.outdoors[0]!.share).toBeCloseTo(1 / 11, 9);
  expect(found.outdoors[0]!.dates).toBeNull();
});
