/** Cross-checks with reference libraries: sun times with suncalc, calendar days with the Temporal polyfill. */
import fc from 'fast-check';
import * as suncalc from 'suncalc';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { dayLengthFao56, sunTimes } from '../../src/core/climate/dayLength.ts';
import { addDays, dayFromParts, dayOfYear, daysBetween, weekday } from '../../src/core/days.ts';

const MS_PER_HOUR = 3_600_000;

/** Hours from sunrise to sunset by suncalc on a day of 2025, a year of 365 days, at longitude 0. */
function suncalcDayLength(lat: number, doy: number): number {
  const noon = new Date(Date.UTC(2025, 0, doy, 12));
  const { sunrise, sunset, alwaysUp } = suncalc.getTimes(noon, lat, 0);
  if (sunrise === null || sunset === null) return alwaysUp ? 24 : 0;
  return (sunset.getTime() - sunrise.getTime()) / MS_PER_HOUR;
}

describe('day length against suncalc', () => {
  /**
   * Minutes allowed by latitude. Spencer's series is for a mean year, a single year runs up to a day ahead of it or behind,
   * and about the equinox one day changes the day length by 3 minutes at 45 and by 6 at 60 degrees.
   */
  const limits = [
    [-60, 8],
    [-45, 5],
    [-34, 4],
    [-20, 4],
    [0, 1],
    [15, 4],
    [25, 4],
    [35, 4],
    [40, 5],
    [45, 5],
    [50, 6],
    [55, 7],
    [60, 8],
  ] as const;
  const latitudes = limits.map(([lat]) => lat);

  it.each(limits)('at latitude %d: within %d minutes on every day of the year', (lat, minutes) => {
    for (let doy = 1; doy <= 365; doy += 1) {
      const off = Math.abs(sunTimes(lat, doy).dayLength - suncalcDayLength(lat, doy));
      expect(off * 60, `day ${doy}`).toBeLessThan(minutes);
    }
  });

  it('agrees on polar night and midnight sun', () => {
    for (const doy of [1, 172, 355]) {
      for (const lat of [80, -80]) expect(sunTimes(lat, doy).dayLength).toBe(suncalcDayLength(lat, doy));
    }
  });

  it('is shorter without refraction, by 4 to 30 minutes up to 60 degrees', () => {
    for (const lat of latitudes) {
      for (const doy of [1, 80, 172, 266, 355]) {
        const shorter = suncalcDayLength(lat, doy) - dayLengthFao56(lat, doy);
        expect(shorter * 60).toBeGreaterThan(0);
        expect(shorter * 60).toBeLessThan(30);
      }
    }
  });
});

describe('calendar days against Temporal', () => {
  const days = fc
    .tuple(
      fc.integer({ min: 1600, max: 2400 }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 1, max: 28 }),
    )
    .map(([year, month, date]) => dayFromParts(year, month, date));

  it('adds days, counts days between and names weekdays alike', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: -40_000, max: 40_000 }), (day, count) => {
        const plain = Temporal.PlainDate.from(day);
        const later = addDays(day, count);
        expect(later).toBe(plain.add({ days: count }).toString());
        expect(daysBetween(day, later)).toBe(count);
        expect(weekday(day)).toBe(plain.dayOfWeek);
      }),
    );
  });

  it('numbers the days of a 365-day year as Temporal does in common years', () => {
    fc.assert(
      fc.property(days, day => {
        const plain = Temporal.PlainDate.from(day);
        const shift = plain.inLeapYear && plain.dayOfYear > 59 ? 1 : 0;
        expect(dayOfYear(day)).toBe(plain.dayOfYear - shift);
      }),
    );
  });
});
