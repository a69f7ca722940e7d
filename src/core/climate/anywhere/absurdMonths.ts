/**
 * Months of a station that cannot be: a slip of a digit or a sign in one figure, which a mean over the neighborhood would carry into every town
 * around. A month is compared with the two beside it, so that neither height nor a cold site matters, and then with what neighbors have.
 */

import { around } from 'geokdbush';
import KDBush from 'kdbush';
import type { Station } from './station.ts';

export interface AbsurdMonth {
  readonly id: string;
  readonly name: string;
  /** 0 is January. */
  readonly month: number;
  readonly what: 'minimum' | 'maximum';
  /** As the table has it, and as the months beside it and the neighbors make likely, C. */
  readonly givenC: number;
  readonly likelyC: number;
}

/** A month so far from its neighbors' is no weather, C: of the 8,787 stations as they stand none is further off than 5.5. Standing: ours. */
const MOST_APART_C = 6;
const NEIGHBORS = 7;
const WITHIN_KM = 600;

/** What a month has over the mean of the two beside it. */
function bend(values: readonly number[], month: number): number {
  const at = (index: number) => values[(index + 12) % 12] as number;
  return at(month) - (at(month - 1) + at(month + 1)) / 2;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] as number;
}

/** The worst month of a station against its neighbors; null where all may be. */
function absurdMonth(station: Station, neighbors: readonly Station[]): AbsurdMonth | null {
  let worst: AbsurdMonth | null = null;
  let apartMost = MOST_APART_C;
  for (const [what, key] of [
    ['minimum', 'tminC'],
    ['maximum', 'tmaxC'],
  ] as const) {
    const values = station[key];
    for (let month = 0; month < 12; month += 1) {
      const apart = bend(values, month) - median(neighbors.map(each => bend(each[key], month)));
      if (Math.abs(apart) <= apartMost) continue;
      apartMost = Math.abs(apart);
      const givenC = values[month] as number;
      worst = { id: station.id, name: station.name, month, what, givenC, likelyC: givenC - apart };
    }
  }
  return worst;
}

/** At most one month of each station: the one furthest off. Stations with fewer than three neighbors are believed. */
export function absurdMonths(stations: readonly Station[]): AbsurdMonth[] {
  if (stations.length === 0) return [];
  const positions = new KDBush(stations.length);
  for (const { lat, lon } of stations) positions.add(lon, lat);
  positions.finish();
  return stations.flatMap((station, own) => {
    const near = around(positions, station.lon, station.lat, NEIGHBORS + 1, WITHIN_KM)
      .filter(index => index !== own)
      .map(index => stations[index] as Station);
    return near.length < 3 ? [] : (absurdMonth(station, near) ?? []);
  });
}
