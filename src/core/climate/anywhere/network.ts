/** Stations made ready for questions about any point: who is near, and what the monthly reports say of the spread of days. */

import { recentChanges } from './recentChange.ts';
import { believableSpreads } from './reportedSpread.ts';
import { type MonthlySpread, spreadFromReports } from './spreadFromReports.ts';
import type { Station } from './station.ts';

/** Mean radius of the Earth, km. Source: IUGG, Geodetic Reference System 1980. */
const EARTH_RADIUS_KM = 6371.0088;
const RADIANS = Math.PI / 180;

/** A station with what was worked out about it once. */
export interface NetworkStation extends Station {
  /** Its means as of 2003-2021, C; null where nothing tells how they changed. */
  readonly recent: { readonly tminC: readonly number[]; readonly tmaxC: readonly number[] } | null;
  /** Spread of daily minima and maxima from the reported spread of daily means; null without reports. */
  readonly spread: MonthlySpread | null;
}

export interface StationNetwork {
  readonly stations: readonly NetworkStation[];
  /** Position of each station on the unit ball, three numbers each. */
  readonly unit: Float64Array;
}

export interface Neighbor {
  readonly station: NetworkStation;
  readonly km: number;
}

export interface Place3 {
  readonly lat: number;
  readonly lon: number;
}

/** Point on the unit ball. */
function onBall({ lat, lon }: Place3): [number, number, number] {
  const across = Math.cos(lat * RADIANS);
  return [across * Math.cos(lon * RADIANS), across * Math.sin(lon * RADIANS), Math.sin(lat * RADIANS)];
}

/** Great-circle distance of two points whose straight-line distance on the unit ball, squared, is given; km. */
const kmOfChord = (squared: number) => 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(squared) / 2));
const chordOfKm = (km: number) => (2 * Math.sin(Math.min(Math.PI, km / EARTH_RADIUS_KM) / 2)) ** 2;

/** Makes a network of stations. Takes about a tenth of a second for nine thousand. */
export function stationNetwork(stations: readonly Station[]): StationNetwork {
  const unit = new Float64Array(stations.length * 3);
  stations.forEach((station, i) => {
    unit.set(onBall(station), i * 3);
  });
  const changes = recentChanges(stations);
  const spreads = believableSpreads(stations);
  return {
    unit,
    stations: stations.map((station, i) => {
      const change = changes[i];
      const moved = (values: readonly number[], by: readonly number[]) =>
        values.map((value, month) => value + (by[month] as number));
      return {
        ...station,
        recent:
          station.period === '2003-2021'
            ? { tminC: station.tminC, tmaxC: station.tmaxC }
            : change
              ? { tminC: moved(station.tminC, change.tminC), tmaxC: moved(station.tmaxC, change.tmaxC) }
              : null,
        spread: spreadFromReports({ ...station, sdMeanC: spreads[i] ?? null }),
      };
    }),
  };
}

export interface NeighborWish {
  /** Which stations count. */
  readonly of: (station: NetworkStation) => boolean;
  /** At most so many. */
  readonly most: number;
  /** Beyond the first `least`, only those within this distance. */
  readonly least: number;
  readonly withinKm: number;
  /** None farther than this. */
  readonly farthestKm: number;
  /** None closer than this: to try the method on places it has figures of. */
  readonly leaveOutKm: number;
}

/** The nearest stations, nearest first. */
export function neighborsOf(network: StationNetwork, point: Place3, wish: NeighborWish): Neighbor[] {
  const [x, y, z] = onBall(point);
  const { unit, stations } = network;
  const reach = chordOfKm(wish.farthestKm);
  const tooNear = wish.leaveOutKm > 0 ? chordOfKm(wish.leaveOutKm) : -1;
  const found: { at: number; chord: number }[] = [];
  for (let i = 0, at = 0; i < stations.length; i += 1, at += 3) {
    const chord =
      ((unit[at] as number) - x) ** 2 +
      ((unit[at + 1] as number) - y) ** 2 +
      ((unit[at + 2] as number) - z) ** 2;
    if (chord > reach || chord < tooNear || !wish.of(stations[i] as NetworkStation)) continue;
    found.push({ at: i, chord });
  }
  found.sort((a, b) => a.chord - b.chord || a.at - b.at);
  const near: Neighbor[] = [];
  for (const { at, chord } of found.slice(0, wish.most)) {
    const km = kmOfChord(chord);
    if (near.length >= wish.least && km > wish.withinKm) break;
    near.push({ station: stations[at] as NetworkStation, km });
  }
  return near;
}
