import { describe, expect, it } from 'vitest';
import { kmBetween } from './distance.ts';

describe('distance', () => {
  it('from equator to pole is a quarter of the circle of the mean radius', () => {
    // Mean radius 6371.0088 km: IUGG, Geodetic Reference System 1980.
    expect(kmBetween({ lat: 0, lon: 10 }, { lat: 90, lon: 77 })).toBeCloseTo((Math.PI / 2) * 6371.0088, 6);
  });

  it('agrees with a worked example', () => {
    // Ed Williams, Aviation Formulary: Los Angeles to New York airports, 0.623585 radians. Value from memory.
    const losAngeles = { lat: 33 + 57 / 60, lon: -(118 + 24 / 60) };
    const newYork = { lat: 40 + 38 / 60, lon: -(73 + 47 / 60) };
    expect(kmBetween(losAngeles, newYork) / 6371.0088).toBeCloseTo(0.623585, 5);
  });

  it('is nothing to the same place, the same both ways, and short across the date line', () => {
    const a = { lat: 10, lon: 179.9 };
    const b = { lat: 10, lon: -179.9 };
    expect(kmBetween(a, a)).toBe(0);
    expect(kmBetween(a, b)).toBeCloseTo(kmBetween(b, a), 9);
    expect(kmBetween(a, b)).toBeLessThan(22);
  });
});
