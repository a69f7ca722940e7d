/**
 * How much warmer 2003-2021 is than 1981-2010. Stations that stand in both tables measure it; in between it is taken from the nearest
 * of them. The change is smooth over hundreds of kilometers, so many are averaged: a single pair carries the luck of its few years.
 */

import { kmBetween } from '../distance.ts';
import type { Station } from './station.ts';

/** A station of each table counts as the same site up to this distance and difference in height. */
const SAME_SITE_KM = 6;
const SAME_SITE_M = 30;
/** Pairs that say something of a point, and how quickly their say falls off. Standing: ours. */
const MOST_PAIRS = 12;
const FARTHEST_KM = 1200;
const HALF_WEIGHT_KM = 150;
const KM_PER_DEGREE = 111;

export interface Change {
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
}

interface Pair extends Change {
  readonly lat: number;
  readonly lon: number;
}

function pairsOf(stations: readonly Station[]): Pair[] {
  const older = stations.filter(({ period }) => period === '1981-2010');
  const countries = new Set(older.map(({ country }) => country));
  return stations
    .filter(({ period, country }) => period === '2003-2021' && countries.has(country))
    .flatMap(recent => {
      const { lat, lon } = recent;
      const same = older
        .filter(
          each =>
            Math.abs(each.lat - lat) < 0.1 && Math.abs(each.elevationM - recent.elevationM) <= SAME_SITE_M,
        )
        .map(station => ({ station, km: kmBetween(station, recent) }))
        .filter(({ km }) => km <= SAME_SITE_KM)
        .sort((a, b) => a.km - b.km)[0]?.station;
      if (!same) return [];
      const minus = (a: readonly number[], b: readonly number[]) =>
        a.map((value, month) => value - (b[month] as number));
      return [{ lat, lon, tminC: minus(recent.tminC, same.tminC), tmaxC: minus(recent.tmaxC, same.tmaxC) }];
    });
}

function changeAt(point: { lat: number; lon: number }, pairs: readonly Pair[]): Change | null {
  const reach = FARTHEST_KM / KM_PER_DEGREE;
  const near = pairs
    .filter(({ lat }) => Math.abs(lat - point.lat) < reach)
    .map(pair => ({ pair, km: kmBetween(point, pair) }))
    .filter(({ km }) => km <= FARTHEST_KM)
    .sort((a, b) => a.km - b.km)
    .slice(0, MOST_PAIRS);
  if (near.length === 0) return null;
  const weights = near.map(({ km }) => 1 / (1 + (km / HALF_WEIGHT_KM) ** 2));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: 'tminC' | 'tmaxC') =>
    Array.from({ length: 12 }, (_, month) =>
      near.reduce(
        (sum, { pair }, i) => sum + ((weights[i] as number) * (pair[of][month] as number)) / total,
        0,
      ),
    );
  return { tminC: mean('tminC'), tmaxC: mean('tmaxC') };
}

/** Change of the monthly means from 1981-2010 to 2003-2021 at each station, C; null where no pair is near. */
export function recentChanges(stations: readonly Station[]): (Change | null)[] {
  const pairs = pairsOf(stations);
  return stations.map(station => (station.period === '1981-2010' ? changeAt(station, pairs) : null));
}
