/** Stations around a point as samples of its monthly figures. */

import type { Sample } from './localRegression.ts';
import type { Neighbor, NetworkStation } from './network.ts';

export interface Point {
  /** Degrees, south and west negative. */
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number;
}

/** Fall of temperature with height assumed beforehand, C a km; what the stations say otherwise is fitted on top. Standing: ours. */
const TMIN_LAPSE = 4;
const TMAX_LAPSE = 6.5;

/** Samples of whatever is read off each station; stations that give nothing are passed over. */
export function samplesOf(
  point: Point,
  neighbors: readonly Neighbor[],
  read: (station: NetworkStation, aboveKm: number) => readonly number[] | null,
): Sample[] {
  const cosine = Math.cos((point.lat * Math.PI) / 180);
  return neighbors.flatMap(({ station, km }) => {
    const aboveKm = (station.elevationM - point.elevationM) / 1000;
    const values = read(station, aboveKm);
    if (values === null) return [];
    const east = ((((station.lon - point.lon) % 360) + 540) % 360) - 180;
    return [{ km, north: station.lat - point.lat, east: east * cosine, aboveKm, values }];
  });
}

/** Twelve minima and twelve maxima at the height of the point. */
export function temperaturesAtHeight(
  { tminC, tmaxC }: { readonly tminC: readonly number[]; readonly tmaxC: readonly number[] },
  aboveKm: number,
): number[] {
  return [
    ...tminC.map(value => value + TMIN_LAPSE * aboveKm),
    ...tmaxC.map(value => value + TMAX_LAPSE * aboveKm),
  ];
}
