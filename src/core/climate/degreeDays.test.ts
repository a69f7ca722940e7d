import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { averageDegreeDays, sineDegreeDays, triangleDegreeDays } from './degreeDays.ts';
import { heatOfYear, hotDays, yearlyDegreeDays } from './heat.ts';
import type { WeatherYears } from './weatherYears.ts';

const day = fc
  .tuple(fc.double({ min: -30, max: 40, noNaN: true }), fc.double({ min: 0, max: 30, noNaN: true }))
  .map(([tmin, range]) => [tmin, tmin + range] as const);
const BASE = 8;
const CAP = 36;

describe('degree days of a day', () => {
  it('never fall when the day gets warmer', () => {
    fc.assert(
      fc.property(day, fc.double({ min: 0, max: 5, noNaN: true }), ([tmin, tmax], more) => {
        for (const of of [sineDegreeDays, triangleDegreeDays]) {
          const before = of(tmin, tmax, BASE, CAP);
          expect(of(tmin + more, tmax + more, BASE, CAP)).toBeGreaterThanOrEqual(before - 1e-9);
          expect(of(tmin, tmax + more, BASE, CAP)).toBeGreaterThanOrEqual(before - 1e-9);
          expect(before).toBeGreaterThanOrEqual(-1e-9);
          expect(before).toBeLessThanOrEqual(CAP - BASE + 1e-9);
        }
      }),
    );
  });

  it('are at least those of the held mean, and horizontal at least vertical', () => {
    fc.assert(
      fc.property(day, ([tmin, tmax]) => {
        const sine = sineDegreeDays(tmin, tmax, BASE, null);
        expect(sine).toBeGreaterThanOrEqual(averageDegreeDays(tmin, tmax, BASE, null, 'mean') - 1e-9);
        for (const of of [sineDegreeDays, triangleDegreeDays]) {
          expect(of(tmin, tmax, BASE, CAP)).toBeGreaterThanOrEqual(
            of(tmin, tmax, BASE, CAP, 'vertical') - 1e-9,
          );
        }
        expect(sineDegreeDays(tmin, tmax, BASE, 1e6)).toBeCloseTo(sine, 9);
      }),
    );
  });

  it('need no special case for a day without a range, and refuse a minimum above its maximum', () => {
    expect(sineDegreeDays(20, 20, BASE, CAP)).toBe(12);
    expect(triangleDegreeDays(5, 5, BASE, CAP)).toBe(0);
    expect(() => sineDegreeDays(20, 10, BASE, CAP)).toThrow(RangeError);
  });
});

describe('heat of a year', () => {
  it('adds up the days by table as the formula does', () => {
    fc.assert(
      fc.property(fc.array(day, { minLength: 365, maxLength: 365 }), days => {
        const years: WeatherYears = {
          lat: 40,
          firstDoy: 205,
          count: 1,
          tminC: Float32Array.from(days, ([tmin]) => tmin),
          tmaxC: Float32Array.from(days, ([, tmax]) => tmax),
          spreadEstimated: false,
        };
        for (const cap of [CAP, null]) {
          const exact = days.reduce((sum, [tmin, tmax]) => sum + sineDegreeDays(tmin, tmax, BASE, cap), 0);
          expect(Math.abs((yearlyDegreeDays(years, BASE, cap)[0] as number) - exact)).toBeLessThan(0.05);
        }
        expect(heatOfYear(years, BASE, null).sd).toBe(0);
        expect(hotDays(years)).toBe(years.tmaxC.filter(tC => tC > 30).length);
      }),
      { numRuns: 20 },
    );
  });
});
