/** Winter lows and the plant hardiness zone they fall into. */
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../units.ts';
import type { Winters } from './freezes.ts';
import { sortedQuantile } from './quantiles.ts';

/**
 * Zones are 10 F wide from 60 F below zero, halves a and b 5 F, by the mean annual extreme minimum.
 * Source: USDA Plant Hardiness Zone Map, 2023 (USDA-ARS and Oregon State University). A bound belongs to the warmer half.
 */
const ZONES_FROM_F = -60;
const HALF_ZONE_F = 5;
const HALF_ZONES = 26;

/** Half zone 0 (`1a`) to 25 (`13b`) of a mean annual minimum; places beyond either end take the end. */
export function halfZoneIndex(meanAnnualMinC: number): number {
  // The sum of a conversion to F can miss a whole number by float dust; a bound must not.
  const tF = Math.round(celsiusToFahrenheit(meanAnnualMinC) * 1e6) / 1e6;
  return Math.min(HALF_ZONES - 1, Math.max(0, Math.floor((tF - ZONES_FROM_F) / HALF_ZONE_F)));
}

/** Name of a half zone, `1a` to `13b`. */
export function halfZoneName(index: number): string {
  return `${Math.floor(index / 2) + 1}${index % 2 === 0 ? 'a' : 'b'}`;
}

/** Winter zone of a mean annual extreme minimum. */
export function winterZone(meanAnnualMinC: number): string {
  return halfZoneName(halfZoneIndex(meanAnnualMinC));
}

/** Half zone index of a name such as `7b` or `7`, where a whole zone counts as its colder half; null for other text. */
export function parseZone(zone: string): number | null {
  const match = /^([1-9]|1[0-3])([ab]?)$/.exec(zone);
  return match === null ? null : (Number(match[1]) - 1) * 2 + (match[2] === 'b' ? 1 : 0);
}

/** Lower bound of a half zone, C. */
export function zoneLowerBoundC(index: number): number {
  return fahrenheitToCelsius(ZONES_FROM_F + HALF_ZONE_F * index);
}

export interface WinterLow {
  /** Mean of the lowest Tmin of each winter. */
  readonly meanC: number;
  /** As cold or colder in one winter in ten. */
  readonly p10C: number;
}

/** Mean and one-in-ten winter low. */
export function winterLow(winters: Winters): WinterLow {
  const sorted = winters.lowestC.slice().sort();
  return {
    meanC: sorted.reduce((sum, low) => sum + low, 0) / sorted.length,
    p10C: sortedQuantile(sorted, 0.1),
  };
}
