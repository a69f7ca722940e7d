/** Rules of the tree's year against plain code that looks at every day anew, and against figures worked out beside them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fig, figure } from '../../../tests/match/places.ts';
import { chillingHour, chillPortionCounter } from '../climate/chill.ts';
import { sunTimes } from '../climate/dayLength.ts';
import { fillHours } from '../climate/hourly.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { evidenceFigures } from '../evidence/matchRipening.ts';
import type { Species } from '../records/species.ts';
import { budbreakNeed } from './budbreak.ts';
import { chillHoursOfDay, restMet } from './dormancy.ts';
import { endOfSeasonOn } from './endOfSeason.ts';
import { daysToForce, daysUntilForced, forcingHours } from './forcing.ts';
import { growingCalendar, reachedOn } from './growingYear.ts';
import { heatCountsFrom, heatStarts } from './heatStart.ts';
import { daysAfterClass, daysSeen, heatSeen, meanYear, middleIndex, middleOf } from './seenDate.ts';

const daysOf = (count: number) =>
  fc.array(fc.tuple(fc.integer({ min: -8, max: 16 }), fc.integer({ min: 0, max: 14 })), {
    minLength: count,
    maxLength: count,
  });

describe('the end of the season', () => {
  it('is the first day after midsummer of a freeze, of a cool spell, or of means that stay too cool, looked for day by day', () => {
    const midsummer = 204;
    const figures = fc.record({
      killingC: fc.integer({ min: -8, max: -5 }),
      tooCoolC: fc.integer({ min: 4, max: 12 }),
      leafFall: fc.record({
        nightC: fc.integer({ min: -9, max: -6 }),
        meanC: fc.integer({ min: 2, max: 8 }),
        spellDays: fc.integer({ min: 1, max: 16 }),
      }),
    });
    fc.assert(
      fc.property(daysOf(365), figures, (days, of) => {
        const mean = (at: number) => days[at]![0] + days[at]![1] / 2;
        const meanOver = (at: number, count: number) => {
          let sum = 0;
          for (let back = 0; back < count; back += 1) sum += mean(at - back);
          return sum / count;
        };
        let lastWarm = 364;
        while (lastWarm >= midsummer && meanOver(lastWarm, 10) < of.tooCoolC) lastWarm -= 1;
        let end = midsummer;
        for (; end < 365; end += 1) {
          if (end > lastWarm || days[end]![0] <= Math.max(of.killingC, of.leafFall.nightC)) break;
          const { spellDays, meanC } = of.leafFall;
          if (end >= midsummer + spellDays - 1 && meanOver(end, spellDays) < meanC - 1e-9) break;
        }
        const year = {
          tminC: Float32Array.from(days, ([low]) => low),
          tmaxC: Float32Array.from(days, ([low, range]) => low + range),
          from: 0,
        };
        // A mean that is the limit itself to the last bit may fall to either side of it.
        const close =
          Math.abs(meanOver(Math.min(end, 364), of.leafFall.spellDays) - of.leafFall.meanC) < 1e-9;
        fc.pre(!close);
        expect(endOfSeasonOn(year, midsummer, of)).toBe(end);
      }),
      { numRuns: 300 },
    );
  });
});

describe('rest', () => {
  it('is met on the first day with its hours of chill and a cool week behind it', () => {
    fc.assert(
      fc.property(daysOf(90), fc.constantFrom('in-pot' as const, 'bare-root' as const), (days, use) => {
        const rule = restMet(use)();
        let hours = 0;
        days.forEach(([low, range], since) => {
          hours += chillHoursOfDay(low, low + range);
          const week = days.slice(Math.max(0, since - 6), since + 1);
          const mean = week.reduce((sum, [tmin, by]) => sum + tmin + by / 2, 0) / week.length;
          const met = hours >= (use === 'in-pot' ? 200 : 300) && mean < 10;
          if (Math.abs(mean - 10) > 1e-9) expect(rule(low, low + range, since)).toBe(met);
          else rule(low, low + range, since);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('counts the share of a sine between 0 and 7.2 C', () => {
    // A mean of 3.6 and a half range of 7.2: outside where the sine is above a half or below minus a half, two thirds of the day.
    expect(chillHoursOfDay(3.6 - 7.2, 3.6 + 7.2)).toBeCloseTo(8, 9);
    expect(chillHoursOfDay(-2, 2)).toBeCloseTo(12, 9);
    expect(chillHoursOfDay(0, 14.4)).toBeCloseTo(12, 9);
    expect(chillHoursOfDay(-10, 0)).toBeCloseTo(0, 9);
    expect([chillHoursOfDay(0, 0), chillHoursOfDay(7.2, 7.2), chillHoursOfDay(7.1, 7.1)]).toEqual([
      24, 0, 24,
    ]);
  });
});

describe('days to force a tree at a steady temperature', () => {
  // Richardson and others 1974: (T - 4.5), T no more than 25 C, 24 hours a day; needs of HortScience 52(4):560, 2017.
  it.each([
    [7, 69, 133],
    [10, 32, 61],
    [12, 23, 45],
    [15, 17, 32],
    [18, 13, 25],
    [20, 12, 22],
    [25, 9, 17],
    [30, 9, 17],
  ])('%d C: %d days for the quickest, %d for the slowest', (meanC, quickest, slowest) => {
    expect([daysToForce(meanC, 4096), daysToForce(meanC, 7928)]).toEqual([quickest, slowest]);
    expect(daysUntilForced(() => meanC, 4096)).toBe(quickest);
    expect(forcingHours(meanC)).toBeCloseTo(24 * (Math.min(meanC, 25) - 4.5), 9);
  });

  it('are told within a year or not at all', () => {
    expect(daysUntilForced(() => 5.5, 24 * 365)).toBe(365);
    expect(daysUntilForced(() => 5.5, 24 * 365 + 1)).toBeNull();
  });
});

describe('the day from which heat counts', () => {
  const figures = evidenceFigures('sfax');
  const years = weatherYears(figures, 8);

  /** Days from October 1 until the middle of seven winters has a need, by the hourly course, winter by winter. */
  function middleByHand(need: number, unit: 'portions' | 'hours'): number {
    // October 1, day 274, is 69 days after July 24.
    const found = Array.from({ length: 7 }, (_, winter) => {
      const count = chillPortionCounter();
      let sum = 0;
      for (let day = 0; day < 182; day += 1) {
        const at = winter * 365 + 69 + day;
        const extremes = (one: number) => ({
          tminC: years.tminC[one] as number,
          tmaxC: years.tmaxC[one] as number,
        });
        const sun = (by: number) => sunTimes(years.lat, ((273 + day + by + 365) % 365) + 1);
        const hours = new Float64Array(24);
        fillHours(hours, 0, [extremes(at - 1), extremes(at), extremes(at + 1)], [sun(-1), sun(0), sun(1)]);
        for (const tC of hours) sum += unit === 'portions' ? count(tC) : chillingHour(tC);
        if (sum >= need) return day;
      }
      return 182;
    });
    return found.sort((a, b) => a - b)[3] as number;
  }

  it.each([
    [20, 'portions'],
    [38, 'portions'],
    [43, 'portions'],
    [90, 'portions'],
    [60, 'hours'],
    [160, 'hours'],
  ] as const)('for %d chill %s is the day the middle winter has them, or March 1', (value, unit) => {
    const [from] = heatCountsFrom(years, [{ unit, value, least: value }], null);
    // January 1 lies 92 days after October 1.
    const byHand = Math.max(59, middleByHand(value, unit) - 92);
    expect(Math.abs((from as number) - byHand)).toBeLessThanOrEqual(unit === 'portions' ? 1 : 0);
  });

  it('is not counted where nine winters of ten give twice the need, and each species has its own', () => {
    const ample = (p10: number) => {
      const range = { p10, p50: p10, p90: p10 };
      return heatCountsFrom(years, [{ unit: 'portions', value: 45, least: 45 }], {
        portions: range,
        hours: range,
      })[0] as number;
    };
    expect(ample(90)).toBe(59);
    expect(ample(89.9)).toBeGreaterThan(59);
    const hungry: Species = { ...fig, id: 'hungry', chillPortions: figure(43) };
    const starts = heatStarts(
      years,
      [fig, hungry, { ...fig, id: 'none', chillPortions: null, chillHours: null }],
      null,
    );
    expect(starts).toMatchObject({ fig: 59, none: 59 });
    expect(starts.hungry).toBeGreaterThan(59);
  });

  it('is half a year later south of the equator', () => {
    const north = evidenceFigures('johnson');
    const south = {
      ...north,
      lat: -north.lat,
      tminC: turned(north.tminC),
      tmaxC: turned(north.tmaxC),
      sdTminC: north.sdTminC && turned(north.sdTminC),
    };
    const from = (of: typeof north, value: number) =>
      heatCountsFrom(weatherYears(of, 8), [{ unit: 'portions', value, least: value }], null)[0] as number;
    // September 1 is 62 days after July 1, 1 March 59 after January 1.
    expect([from(north, 60), from(south, 60)]).toEqual([59, 62]);
    expect(from(north, 90)).toBeGreaterThan(62);
    expect(Math.abs(from(south, 90) - from(north, 90))).toBeLessThanOrEqual(5);
  });
});

function turned(monthly: readonly number[]): number[] {
  return [...monthly.slice(6), ...monthly.slice(0, 6)];
}

describe('a date that was seen', () => {
  const calendar = growingCalendar(40);
  /** 10 degree days a day from March 1 on. */
  const heatSum = Float64Array.from({ length: 366 }, (_, at) => Math.max(0, at - 59) * 10);
  const year = { calendar, heatSum };
  const range = (from: string, to: string = from) => ({ from, to });

  it('lies in the middle of its range, over the new year too', () => {
    expect(middleOf(range('08-01', '08-11'))).toEqual({ doy: 213, half: 5 });
    expect(middleOf(range('12-30', '01-03'))).toEqual({ doy: 364, half: 2 });
    expect(middleIndex(range('01-01'), calendar)).toBe(0);
    expect(middleIndex(range('08-01', '08-02'), calendar)).toBe(212.5);
    expect(middleIndex(range('01-01'), growingCalendar(-40))).toBe(184);
    expect(() => middleOf(range('02-30'))).toThrow(RangeError);
  });

  it('asks for the heat of its day, halves between two days', () => {
    // By the end of August 1, index 212: 154 days of heat.
    expect(heatSeen(year, range('08-01'))).toBe(1540);
    expect(heatSeen(year, range('08-01', '08-02'))).toBe(1545);
    expect(heatSeen(year, range('12-31'))).toBe(3060);
  });

  it('asks for its days from a bloom in late May, three fifths of a late bloom taken off', () => {
    // 950 degree days on index 153, nine days after May 25 (144).
    expect(daysSeen(year, range('08-01'), 950)).toBeCloseTo(212 - 144 - 0.6 * 9, 9);
    expect(daysSeen(year, range('08-01'), 860)).toBeCloseTo(212 - 144, 9);
    expect(daysSeen(year, range('08-01'), 760)).toBeCloseTo(212 - 144 + 0.6 * 10, 9);
  });

  it('lies so many days after its class', () => {
    expect(
      daysAfterClass(year, range('08-01'), { by: 'heat', heat: 1440, budbreakHeat: 164, leastDays: 0 }),
    ).toBe(10);
    expect(
      daysAfterClass(year, range('08-01'), { by: 'heat', heat: 1640, budbreakHeat: 164, leastDays: 0 }),
    ).toBe(-10);
    const need = { by: 'bloom' as const, bloomHeat: 860, days: 60, leastHeat: 100 };
    expect(daysAfterClass(year, range('08-01'), need)).toBe(8);
    // The least heat: 800 degree days from bloom on index 144 are there on 224 - 1.
    expect(daysAfterClass(year, range('08-01'), { ...need, leastHeat: 800 })).toBe(212 - 223);
    expect(daysAfterClass(year, range('08-01'), { ...need, days: 900 })).toBe(212 - 365);
  });

  it('is told by the mean of all whole years', () => {
    const years = weatherYears(evidenceFigures('davis'), 6);
    const { heatSum: sums } = meanYear(years, fig);
    const one = meanYear({ ...years, count: 2 }, fig).heatSum;
    expect(sums[59]).toBe(0);
    expect(sums[365]).toBeGreaterThan(2500);
    expect(Math.abs((sums[365] as number) - (one[365] as number))).toBeLessThan(300);
    expect(meanYear(years, fig)).toBe(meanYear(years, fig));
    expect(meanYear(years, { ...fig, heatBaseC: figure(10) })).not.toBe(meanYear(years, fig));
  });
});

it('finds the day of a sum as a plain search does, from where it is asked to', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 365, maxLength: 365 }),
      fc.integer({ min: 0, max: 300 }),
      fc.integer({ min: 0, max: 4000 }),
      (heats, from, target) => {
        const sums = new Float64Array(366);
        heats.forEach((heat, at) => {
          sums[at + 1] = (sums[at] as number) + heat;
        });
        let plain = from;
        while (plain < 365 && (sums[plain + 1] as number) < target) plain += 1;
        expect(reachedOn(sums, from, target)).toBe(plain);
      },
    ),
  );
  expect(budbreakNeed(fig)).toEqual({ heat: 164, baseC: 8, capC: 36 });
});
