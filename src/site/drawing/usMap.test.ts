import { describe, expect, it } from 'vitest';
import { MAP_HEIGHT, MAP_WIDTH, onMap, usOutlines } from './usMap.ts';

const at = (lat: number, lon: number, country = 'US') => onMap({ country, lat, lon });

describe('the map of the United States', () => {
  const { land, borders } = usOutlines();
  const points = [...borders.matchAll(/(\d+) (\d+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));

  it('puts positions where the shapes are', () => {
    // Four Corners, where Utah, Colorado, Arizona and New Mexico meet. Source: U.S. National Geodetic Survey, 36.99908 N, 109.04521 W.
    const corners = at(36.99908, -109.04521)!;
    const nearest = Math.min(...points.map(({ x, y }) => Math.hypot(x - corners.x, y - corners.y)));
    expect(nearest).toBeLessThan(3);
  });

  it('keeps all of it on the drawing', () => {
    for (const [lat, lon] of [
      [47.5, -122.3],
      [25.8, -80.3],
      [21.3, -157.9],
      [61.2, -149.9],
    ] as const) {
      const { x, y } = at(lat, lon)!;
      expect(x > 0 && x < MAP_WIDTH && y > 0 && y < MAP_HEIGHT).toBe(true);
    }
    expect(land).toMatch(/^M/);
    expect(points.every(({ x, y }) => x <= MAP_WIDTH && y <= MAP_HEIGHT)).toBe(true);
  });

  it('leaves out other countries, however near', () => {
    expect(at(43.7, -79.6, 'CA')).toBeNull();
    expect(at(50.9, 7.1, 'DE')).toBeNull();
  });
});
