import { describe, expect, it } from 'vitest';
import { daysToForce, daysUntilForced, FORCING_NEED, forcingHours, SWELL_SHARE } from './forcing.ts';

describe('forcing heat', () => {
  it('counts growing degree hours from 4.5 to 25 C', () => {
    // Richardson and others 1974: base 4.5 C, nothing more above 25 C.
    expect(forcingHours(10)).toBe(132);
    expect(forcingHours(4.5)).toBe(0);
    expect(forcingHours(-5)).toBe(0);
    expect(forcingHours(25)).toBe(492);
    expect(forcingHours(35)).toBe(492);
  });

  it('gives a week at 50 F (10 C) an eighth to a quarter of the need', () => {
    // HortScience 52(4):560, 2017: 4,096 to 7,928 growing degree hours over 20 pomegranates.
    expect(FORCING_NEED).toEqual({ low: 4096, high: 7928 });
    const week = 7 * forcingHours(10);
    expect(week / FORCING_NEED.low).toBeCloseTo(0.226, 2);
    expect(week / FORCING_NEED.high).toBeCloseTo(0.117, 2);
    expect(daysToForce(4, 4096)).toBe(Number.POSITIVE_INFINITY);
    expect(daysToForce(10, 4096)).toBe(32);
    expect(SWELL_SHARE).toBe(0.6);
  });

  it('adds up days that differ', () => {
    expect(daysUntilForced(() => 10, 132 * 5)).toBe(5);
    expect(daysUntilForced(since => (since < 3 ? 4 : 10), 132 * 5)).toBe(8);
    expect(daysUntilForced(() => 4, 1)).toBeNull();
  });
});
