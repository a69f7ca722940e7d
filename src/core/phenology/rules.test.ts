/** Budbreak, leaf fall, dormancy and the start and end of growth, day by day. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fig } from '../../../tests/match/places.ts';
import type { DayRule } from '../climate/forecast.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { budbreak } from './budbreak.ts';
import { endOfSeasonFigures, endOfSeasonOn, killingFreezeAt } from './endOfSeason.ts';
import { heatMetOn, sumHeat } from './growingYear.ts';
import { growthStartsOn } from './growthStart.ts';
import { leafFall, leafFallOn } from './leafFall.ts';

const MIDSUMMER = 204;

/** Day on which a rule comes true over days of [tmin, tmax], from 1; null when it does not. */
function dayOf(makeRule: () => DayRule, days: readonly (readonly [number, number])[]): number | null {
  const rule = makeRule();
  const index = days.findIndex(([tminC, tmaxC], since) => rule(tminC, tmaxC, since));
  return index < 0 ? null : index + 1;
}
const alike = (count: number, tminC: number, tmaxC: number) =>
  new Array<[number, number]>(count).fill([tminC, tmaxC]);

/** A year of one mild temperature with some nights and spells of its own. */
function yearOf(
  baseC: number,
  nights: readonly (readonly [index: number, tC: number])[] = [],
  spells: readonly (readonly [from: number, to: number, meanC: number])[] = [],
) {
  const tminC = new Float32Array(365).fill(baseC - 5);
  const tmaxC = new Float32Array(365).fill(baseC + 5);
  for (const [from, to, meanC] of spells) {
    tminC.fill(meanC - 5, from, to);
    tmaxC.fill(meanC + 5, from, to);
  }
  for (const [index, tC] of nights) tminC[index] = tC;
  return { tminC, tmaxC, from: 0 };
}

describe('budbreak', () => {
  it('counts heat above the base', () => {
    // Every day is warmer than the base all day: the mean of 14 C gives 6 degree days above 8 C.
    expect(dayOf(budbreak({ heat: 60, baseC: 8, capC: 36 }), alike(30, 9, 19))).toBe(10);
    expect(dayOf(budbreak({ heat: 61, baseC: 8, capC: 36 }), alike(30, 9, 19))).toBe(11);
  });

  it('comes on the same day whether watched day by day or found in sums', () => {
    const spring = fc.array(fc.tuple(fc.integer({ min: -10, max: 20 }), fc.integer({ min: 1, max: 18 })), {
      minLength: 365,
      maxLength: 365,
    });
    fc.assert(
      fc.property(spring, fc.integer({ min: 1, max: 900 }), (days, heat) => {
        const tminC = Float32Array.from(days, ([low]) => low);
        const tmaxC = Float32Array.from(days, ([low, range]) => low + range);
        const sums = new Float64Array(366);
        sumHeat(sums, { lat: 40, firstDoy: 1, count: 1, tminC, tmaxC, spreadEstimated: false }, 0, 59, 8, 30);
        const watched = dayOf(
          budbreak({ heat, baseC: 8, capC: 30 }),
          days.slice(59).map(([low, range]) => [low, low + range] as const),
        );
        // Sums by table are good to 0.0001 a day, so a need met to the last bit may fall on the day beside.
        const found = heatMetOn(sums, 59, heat);
        expect(Math.abs((watched === null ? 365 : 59 + watched - 1) - found)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 100 },
    );
  });
});

describe('leaf fall', () => {
  const rule = leafFall({ nightC: -2, meanC: 9, spellDays: 3 });

  it('comes with one cold night', () => {
    expect(
      dayOf(rule, [
        [5, 20],
        [-1.9, 20],
        [-2, 18],
      ]),
    ).toBe(3);
  });

  it('comes with a spell of days that are cool on average', () => {
    expect(
      dayOf(rule, [...alike(5, 8, 18), ...alike(1, 2, 12), ...alike(1, 5, 15), ...alike(1, 2, 12)]),
    ).toBe(8);
    expect(dayOf(rule, [...alike(5, 8, 18), ...alike(9, 4, 14)])).toBeNull();
  });

  it('takes as many days as the spell has, however cold the days and mild the nights', () => {
    expect(dayOf(rule, alike(9, 0, 4))).toBe(3);
    expect(dayOf(leafFall({ nightC: -2, meanC: 9, spellDays: 14 }), alike(30, 0, 4))).toBe(14);
  });

  it('comes on the same day whether watched day by day or sought in a whole year', () => {
    const fall = fc.array(fc.tuple(fc.integer({ min: -5, max: 14 }), fc.integer({ min: 1, max: 12 })), {
      minLength: 60,
      maxLength: 60,
    });
    const figures = fc.record({
      nightC: fc.integer({ min: -5, max: -1 }),
      meanC: fc.integer({ min: 5, max: 12 }),
      spellDays: fc.integer({ min: 1, max: 20 }),
    });
    fc.assert(
      fc.property(fall, figures, fc.integer({ min: 0, max: 20 }), (days, of, since) => {
        const year = {
          tminC: Float32Array.from(days, ([low]) => low),
          tmaxC: Float32Array.from(days, ([low, range]) => low + range),
          from: 0,
        };
        const watched = dayOf(
          leafFall(of),
          days.slice(since).map(([low, range]) => [low, low + range] as const),
        );
        expect(leafFallOn(year, since, 60, of)).toBe(watched === null ? 60 : since + watched - 1);
      }),
    );
  });
});

describe('the start of growth', () => {
  const start = (nights: readonly (readonly [number, number])[], budbreakAt = 70) =>
    growthStartsOn(yearOf(15, nights), budbreakAt, -1, MIDSUMMER);

  it('is budbreak, or the day after the last freeze that hurts leaves', () => {
    expect(start([])).toBe(70);
    expect(start([[100, -1]])).toBe(101);
    expect(
      start([
        [90, -4],
        [100, -1],
      ]),
    ).toBe(101);
    expect(start([[70, -1]])).toBe(71);
  });

  it('does not mind a freeze before budbreak, after midsummer, or too light to hurt', () => {
    expect(start([[69, -9]])).toBe(70);
    expect(start([[MIDSUMMER, -9]])).toBe(70);
    expect(start([[MIDSUMMER - 1, -9]])).toBe(MIDSUMMER);
    expect(start([[100, -0.9]])).toBe(70);
    expect(growthStartsOn(yearOf(15, [[100, -5]]), 70, null, MIDSUMMER)).toBe(70);
  });
});

describe('the end of the season', () => {
  const figures = { killingC: -2.5, leafFall: { nightC: -3, meanC: 8, spellDays: 14 }, tooCoolC: 12 };
  const end = (...year: Parameters<typeof yearOf>) => endOfSeasonOn(yearOf(...year), MIDSUMMER, figures);

  it('is the first killing freeze after midsummer', () => {
    expect(end(15, [[300, -2.5]])).toBe(300);
    expect(
      end(15, [
        [280, -2.4],
        [310, -2.5],
      ]),
    ).toBe(310);
    expect(end(15, [[MIDSUMMER - 1, -9]])).toBe(365);
    expect(end(15, [[MIDSUMMER, -9]])).toBe(MIDSUMMER);
  });

  it('is leaf fall where that comes first', () => {
    // From day 250 the mean is 5 C, then 15 C again: 14 days below 8 C on average take 10 such days, (4 x 15 + 10 x 5) / 14 = 7.86.
    expect(end(15, [], [[250, 280, 5]])).toBe(259);
    const early = { ...figures, leafFall: { ...figures.leafFall, nightC: -1 } };
    expect(endOfSeasonOn(yearOf(15, [[300, -1]]), MIDSUMMER, early)).toBe(300);
  });

  it('is the day from which ten-day means stay too cool', () => {
    // After day 300 the mean is 11 C; the ten days up to day 306 are the last whose mean reaches 12 C: (3 x 15 + 7 x 11) / 10 = 12.2.
    expect(end(15, [], [[300, 365, 11]])).toBe(307);
    // A cool spell that passes ends nothing.
    expect(
      end(
        15,
        [],
        [
          [250, 270, 11],
          [300, 365, 11],
        ],
      ),
    ).toBe(307);
    expect(end(11)).toBe(MIDSUMMER);
    expect(end(12)).toBe(365);
  });

  it('does not come where nothing ends it', () => {
    expect(end(15)).toBe(365);
  });

  it('knows only the freeze where only a freeze is asked about', () => {
    const freeze = killingFreezeAt(-2.5);
    expect(endOfSeasonOn(yearOf(4, [[300, -2.5]]), MIDSUMMER, freeze)).toBe(300);
    expect(endOfSeasonOn(yearOf(4), MIDSUMMER, freeze)).toBe(365);
  });

  it('takes a night of 28 F for a killing freeze, or what hurts the leaves where that is colder', () => {
    expect(endOfSeasonFigures(fig).killingC).toBeCloseTo(fahrenheitToCelsius(28), 9);
    const hardy = { ...fig, leafDamageC: { ...fig.leafDamageC, value: -4 } };
    expect(endOfSeasonFigures(hardy).killingC).toBe(-4);
    expect(endOfSeasonFigures(fig)).toMatchObject({
      tooCoolC: 13,
      leafFall: { nightC: -3.3, spellDays: 14 },
    });
  });
});
