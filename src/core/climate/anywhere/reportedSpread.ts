/**
 * Reported spreads of daily means that can be believed. Some reports carry typing faults that blow a month's standard deviation up,
 * most of them in the tropics, where true spreads are near 1 C; the stations around show which.
 */

import { kmBetween } from '../distance.ts';
import type { Station } from './station.ts';

/** Stations a value is compared with, itself among them. */
const COMPARED = 9;
const WITHIN_KM = 800;
const KM_PER_DEGREE = 111;
const FEWEST_COMPARED = 4;
/** How many times the usual value of the stations around is still believed, and what share of it. Standing: ours. */
const MOST = 1.6;
const LEAST = 0.6;
/** Where faults are common they only ever enlarge, so the lower quartile is the usual value there and less is believed. Standing: ours. */
const TROPICS_LAT = 25;
const TROPICS_QUANTILE = 0.25;
const TROPICS_MOST = 1.35;

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1) + 0.5)] as number;
}

/** The monthly standard deviations of daily means of each station, C, held to what its neighbors make likely; null where none are reported. */
export function believableSpreads(stations: readonly Station[]): (readonly number[] | null)[] {
  const reporting = stations.filter(({ sdMeanC }) => sdMeanC !== null);
  return stations.map(station => {
    const own = station.sdMeanC;
    if (own === null) return null;
    const tropics = Math.abs(station.lat) < TROPICS_LAT;
    const near = reporting
      .filter(({ lat }) => Math.abs(lat - station.lat) * KM_PER_DEGREE < WITHIN_KM)
      .map(other => ({ other, km: kmBetween(station, other) }))
      .filter(({ km }) => km <= WITHIN_KM)
      .sort((a, b) => a.km - b.km)
      .slice(0, COMPARED);
    if (near.length < FEWEST_COMPARED) return own;
    return own.map((value, month) => {
      const usual = quantile(
        near.map(({ other }) => other.sdMeanC?.[month] as number),
        tropics ? TROPICS_QUANTILE : 0.5,
      );
      return Math.min(usual * (tropics ? TROPICS_MOST : MOST), Math.max(usual * LEAST, value));
    });
  });
}
