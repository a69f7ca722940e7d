/**
 * The United States as a drawing: outlines of the states and where a position lies on it. Shapes: Census Bureau cartographic
 * boundary files, 2017, from the package us-atlas, already laid out (Albers, Alaska and Hawaii moved in) for 975 by 610.
 */

import { geoAlbersUsa, geoPath } from 'd3-geo';
import { feature, mesh } from 'topojson-client';
import type { GeometryObject, Topology } from 'topojson-specification';
import atlas from 'us-atlas/states-albers-10m.json' with { type: 'json' };
import type { Place } from '../../core/records/place.ts';
import { roundTo } from '../../core/units.ts';

export const MAP_WIDTH = 975;
export const MAP_HEIGHT = 610;

/** The projection the shapes of the package were made with, as its readme gives it. */
const projection = geoAlbersUsa()
  .scale(1300)
  .translate([MAP_WIDTH / 2, MAP_HEIGHT / 2]);

/** Where a place lies on the drawing; null outside the United States, whose neighbors the projection would let in. */
export function onMap({
  country,
  lat,
  lon,
}: Pick<Place, 'country' | 'lat' | 'lon'>): { x: number; y: number } | null {
  const point = country === 'US' ? projection([lon, lat]) : null;
  return point && { x: roundTo(point[0], 1), y: roundTo(point[1], 1) };
}

/** Drops points closer than this to the one before: less than the width of a line as the map is shown. */
const LEAST_STEP = 2.5;

/** A path with whole coordinates and without the points nobody could see. */
function simplified(path: string): string {
  return path
    .split(/(?=M)/)
    .map(ring => {
      const closed = ring.endsWith('Z');
      const points = ring
        .replace(/[MZ]/g, '')
        .split('L')
        .map(pair => pair.split(',').map(Number) as [number, number]);
      const kept: [number, number][] = [];
      for (const [x, y] of points) {
        const last = kept.at(-1);
        if (last && Math.hypot(x - last[0], y - last[1]) < LEAST_STEP) continue;
        kept.push([Math.round(x), Math.round(y)]);
      }
      if (kept.length < (closed ? 4 : 2)) return '';
      return `M${kept.map(([x, y]) => `${x} ${y}`).join('L')}${closed ? 'Z' : ''}`;
    })
    .join('');
}

/** Outline of the country and the lines between its states. */
export function usOutlines(): { land: string; borders: string } {
  const topology = atlas as unknown as Topology<{ nation: GeometryObject; states: GeometryObject }>;
  const { nation, states } = topology.objects;
  const draw = geoPath(null);
  return {
    land: simplified(draw(feature(topology, nation)) ?? ''),
    borders: simplified(draw(mesh(topology, states, (a, b) => a !== b)) ?? ''),
  };
}
