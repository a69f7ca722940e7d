import { describe, expect, it } from 'vitest';
import { sunTimes } from '../climate/dayLength.ts';
import { fillHours } from '../climate/hourly.ts';
import { chillHoursOfDay, restMet } from './dormancy.ts';

describe('chilling hours of a day', () => {
  it('are none in heat and in hard frost, and all of a day that stays between the bounds', () => {
    expect(chillHoursOfDay(7.5, 20)).toBe(0);
    expect(chillHoursOfDay(-12, -0.5)).toBe(0);
    expect(chillHoursOfDay(0.5, 7)).toBeCloseTo(24, 9);
    expect(chillHoursOfDay(4, 4)).toBe(24);
    expect(chillHoursOfDay(9, 9)).toBe(0);
  });

  it('are half the day where a bound lies at its mean', () => {
    expect(chillHoursOfDay(-3.6, 3.6)).toBeCloseTo(12, 9);
    expect(chillHoursOfDay(4.2, 10.2)).toBeCloseTo(12, 9);
  });

  /** Hourly course: Linvill 1990, HortScience 25:14-16. */
  it('keep within four hours a day of an hourly course in November and January at 35 degrees', () => {
    for (const [doy, low, high] of [
      [319, 1, 14],
      [350, -2, 9],
      [15, -5, 8],
      [15, 1, 11],
    ] as const) {
      const day = { tminC: low, tmaxC: high };
      const sun = sunTimes(35.4, doy);
      const hours = new Float64Array(24);
      fillHours(hours, 0, [day, day, day], [sun, sun, sun]);
      const counted = hours.filter(tC => tC >= 0 && tC <= 7.2).length;
      expect(Math.abs(chillHoursOfDay(low, high) - counted)).toBeLessThanOrEqual(4);
    }
  });
});

describe('rest met, day after day', () => {
  function daysUntil(use: 'in-pot' | 'bare-root', days: readonly (readonly [number, number])[]): number {
    const rule = restMet(use)();
    return days.findIndex(([low, high], since) => rule(low, high, since));
  }
  const cold = Array.from({ length: 30 }, () => [1, 6] as const);

  it('takes the hours the tree needs: 200 in its pot, 300 to bare its roots', () => {
    expect(daysUntil('in-pot', cold)).toBe(Math.ceil(200 / 24) - 1);
    expect(daysUntil('bare-root', cold)).toBe(Math.ceil(300 / 24) - 1);
  });

  it('waits through a warm week, and never comes without cold', () => {
    const warm = Array.from({ length: 10 }, () => [8, 18] as const);
    const at = daysUntil('bare-root', [...cold.slice(0, 12), ...warm, ...cold]);
    expect(at).toBeGreaterThanOrEqual(12 + 10 + 2);
    expect(
      daysUntil(
        'in-pot',
        Array.from({ length: 400 }, () => [12, 24] as const),
      ),
    ).toBe(-1);
  });
});
