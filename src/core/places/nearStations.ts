/** Weather stations around a position, as a grower chooses among them. */

import {
  type Neighbor,
  type NetworkStation,
  neighborsOf,
  type StationNetwork,
} from '../climate/anywhere/network.ts';
import type { Position } from '../climate/distance.ts';

/** Farther than this a station says too little of a yard to speak for it, km. Ours. */
const FARTHEST_KM = 60;

/** Stations with figures around a position, nearest first. */
export function stationsNear(network: StationNetwork, position: Position, most: number): Neighbor[] {
  return neighborsOf(network, position, {
    having: '2003-2021',
    most,
    least: most,
    withinKm: FARTHEST_KM,
    farthestKm: FARTHEST_KM,
    leaveOutKm: 0,
  });
}

/** `Asheville, NC, 645 m up (USW00013872)`. */
export function stationInWords({ id, name, region, country, elevationM }: NetworkStation): string {
  return `${name}, ${region || country}, ${Math.round(elevationM)} m up (${id})`;
}
