/** Trips over the weather years, at one end and at both. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAYS_PER_YEAR } from '../../src/core/climate/calendar.ts';
import { type WeatherYears, weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { breachesOf, passingDays, tripRisks, tripWaits } from '../../src/core/match/trips.ts';
import { fahrenheitToCelsius } from '../../src/core/units.ts';

const limits = { coldestC: -20 / 3, hottestC: 35 };
const TRANSIT = 3;

/** Two seasons from July 24, mild but for what is set. */
function twoSeasons(cold: readonly number[], hot: readonly number[]): WeatherYears {
  const tminC = new Float32Array(730).fill(5);
  const tmaxC = new Float32Array(730).fill(20);
  for (const at of cold) tminC[at] = -7;
  for (const at of hot) tmaxC[at] = 36;
  return { lat: 40, firstDoy: 205, count: 2, tminC, tmaxC, spreadEstimated: false };
}

describe('chances on the way', () => {
  it('count a limit met on any day of the trip, in its share of the years', () => {
    const { cold, heat, either } = tripRisks(twoSeasons([200], [201, 566]), limits, TRANSIT);
    const at = (index: number) => (204 + index) % 365;
    expect([196, 197, 200, 201].map(index => cold[at(index)])).toEqual([0, 0.5, 0.5, 0]);
    expect([197, 198, 201, 202].map(index => heat[at(index)])).toEqual([0, 1, 1, 0]);
    expect([197, 198, 201, 202].map(index => either[at(index)])).toEqual([0.5, 1, 1, 0]);
  });

  it('count a night or a day of just the limit, at either end of the counting', () => {
    const exact = { coldestC: -7, hottestC: 36 };
    const years = twoSeasons([200], [500]);
    const { cold, heat } = tripRisks(years, exact, TRANSIT);
    expect([cold[(204 + 200) % 365], heat[(204 + 500) % 365]]).toEqual([0.5, 0.5]);
    // January 1 is day 161 of a season from July 24; trips from day 197 to 200 meet the night, from 497 to 500 the day.
    const passes = passingDays(years, exact, TRANSIT);
    const met = [...passes].flatMap((passing, at) => (passing === 1 ? [] : [at + 161]));
    expect(met).toEqual([197, 198, 199, 200, 497, 498, 499, 500]);
    expect(passes).toHaveLength(365);
    const hair = { coldestC: -7.1, hottestC: 36.1 };
    expect([...passingDays(years, hair, TRANSIT)].every(passing => passing === 1)).toBe(true);
    expect(breachesOf([{ tminC: -7, tmaxC: 36 }], exact)).toEqual(['cold', 'heat']);
    expect(breachesOf([{ tminC: -7, tmaxC: 36 }], hair)).toEqual([]);
  });

  it('rise with the days on the way and with tighter limits', () => {
    const years = weatherYears(evidenceFigures('johnson'), 100);
    const total = (transitDays: number, coldestC: number, hottestC: number) =>
      tripRisks(years, { coldestC, hottestC }, transitDays).either.reduce((sum, risk) => sum + risk, 0);
    const usual = total(3, limits.coldestC, limits.hottestC);
    expect(total(5, limits.coldestC, limits.hottestC)).toBeGreaterThan(usual);
    expect(total(3, -3, limits.hottestC)).toBeGreaterThan(usual);
    expect(total(3, limits.coldestC, 32)).toBeGreaterThan(usual);
  });

  it('agree with every single trip looked at by itself', () => {
    const years = weatherYears(evidenceFigures('johnson'), 40);
    const passes = passingDays(years, limits, TRANSIT);
    const from = (365 - years.firstDoy + 1) % 365;
    const tripAt = (start: number) =>
      Array.from({ length: TRANSIT + 1 }, (_, day) => ({
        tminC: years.tminC[start + day] as number,
        tmaxC: years.tmaxC[start + day] as number,
      }));
    for (let i = 0; i < passes.length; i += 1) {
      expect(passes[i]).toBe(breachesOf(tripAt(from + i), limits).length === 0 ? 1 : 0);
    }
  });
});

describe('this trip', () => {
  const F = fahrenheitToCelsius;
  const trip = (...days: [number, number][]) =>
    days.map(([low, high]) => ({ tminC: F(low), tmaxC: F(high) }));
  const dormant = { coldestC: F(20), hottestC: F(80) };

  it('breaks a limit by a night at it or a day at it', () => {
    expect(breachesOf(trip([21, 45], [25, 79]), dormant)).toEqual([]);
    expect(breachesOf(trip([20, 45], [25, 50]), dormant)).toEqual(['cold']);
    expect(breachesOf(trip([30, 80], [12, 50]), dormant)).toEqual(['cold', 'heat']);
  });
});

describe('waits', () => {
  /** What the waits mean, counted day by day without any of their shortcuts. */
  function waitsByHand(passes: Uint8Array, weekday: number, weekdays: readonly number[], day: number) {
    const waits: number[] = [];
    for (let at = day; at < passes.length; at += DAYS_PER_YEAR) {
      let wait = 0;
      while (at + wait < passes.length) {
        const on = ((weekday - 1 + wait) % 7) + 1;
        if (weekdays.includes(on) && passes[at + wait] === 1) break;
        wait += 1;
      }
      waits.push(Math.min(wait, 120));
    }
    return waits.sort((a, b) => a - b);
  }

  it('are those of counting day by day, whatever the sending days', () => {
    const years = weatherYears(evidenceFigures('johnson'), 60);
    const passes = passingDays(years, limits, TRANSIT);
    const everywhere = new Uint8Array(passes.length).fill(1);
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 0, max: 364 }),
        (weekdays, day) => {
          const waits = tripWaits(passes, everywhere, weekdays);
          const weekday = weekdays[0] as number;
          const byHand = waitsByHand(passes, weekday, weekdays, day);
          const middle = byHand[Math.ceil(byHand.length * 0.5) - 1];
          expect(waits.get(weekday)?.middle[day]).toBe(middle);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are no shorter where a second end has to pass too', () => {
    const years = weatherYears(evidenceFigures('johnson'), 60);
    const other = weatherYears(evidenceFigures('davis'), 60);
    const [here, there] = [years, other].map(each => passingDays(each, limits, TRANSIT)) as [
      Uint8Array,
      Uint8Array,
    ];
    const both = tripWaits(here, there, [1, 2]).get(1);
    const one = tripWaits(here, here, [1, 2]).get(1);
    for (let day = 0; day < 365; day += 1) {
      expect(both?.middle[day]).toBeGreaterThanOrEqual(one?.middle[day] as number);
      expect(both?.late[day]).toBeGreaterThanOrEqual(both?.middle[day] as number);
    }
  });
});
