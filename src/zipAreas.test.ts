import { beforeAll, describe, expect, it } from 'vitest';
import { kmBetween } from './core/climate/distance.ts';
import { type ZipArea, zipAreas, zipAreasFrom } from './zipAreas.ts';

describe('ZIP code areas', () => {
  let areas: Record<string, ZipArea>;
  beforeAll(async () => {
    areas = await zipAreas();
  });

  /** Prefix and a city of it. Positions: U.S. Board on Geographic Names; prefixes: USPS labeling list L002. Both from memory. */
  it.each([
    ['100', 'New York', 40.71, -74.01],
    ['288', 'Asheville', 35.6, -82.55],
    ['606', 'Chicago', 41.85, -87.65],
    ['733', 'none in use', null, null],
    ['787', 'Austin', 30.27, -97.74],
    ['968', 'Honolulu', 21.31, -157.86],
    ['981', 'Seattle', 47.61, -122.33],
  ] as const)('%s lies at %s', (prefix, _, lat, lon) => {
    const area = areas[prefix];
    if (lat === null) expect(area).toBeUndefined();
    else expect(kmBetween({ lat: area![0], lon: area![1] }, { lat, lon })).toBeLessThan(25);
  });

  it('cover the states: every prefix in use is a few digits and a place on the map', () => {
    expect(Object.keys(areas).length).toBeGreaterThan(850);
    for (const [prefix, [lat, , reachKm]] of Object.entries(areas)) {
      expect(prefix).toMatch(/^\d{3}$/);
      expect(lat).toBeGreaterThan(-15);
      expect(lat).toBeLessThan(72);
      expect(reachKm).toBeGreaterThanOrEqual(1);
    }
  });

  it('reach as far as nine of ten of their codes', () => {
    const [lat, lon, reachKm] = zipAreasFrom({
      '12301': { latitude: 40, longitude: -75 },
      '12302': { latitude: 41, longitude: -75 },
    })['123']!;
    expect([lat, lon]).toEqual([40.5, -75]);
    // Half a degree of latitude is about 55.6 km.
    expect(reachKm).toBe(56);
  });
});
