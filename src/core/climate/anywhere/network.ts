/** Stations made ready for questions about any point: who is near, and what the monthly reports say of the spread of days. */

import { around } from 'geokdbush';
import KDBush from 'kdbush';
import { kmBetween, type Position } from '../distance.ts';
import { recentChanges } from './recentChange.ts';
import { believableSpreads } from './reportedSpread.ts';
import { type MonthlySpread, spreadFromReports } from './spreadFromReports.ts';
import type { Station } from './station.ts';

/** A station with what was worked out about it once. */
export interface NetworkStation extends Station {
  /** Its means as of 2003-2021, C; null where nothing tells how they changed. */
  readonly recent: { readonly tminC: readonly number[]; readonly tmaxC: readonly number[] } | null;
  /** Spread of daily minima and maxima from the reported spread of daily means; null without reports. */
  readonly spread: MonthlySpread | null;
}

/** Whether a station has each kind of figure. */
const has = {
  '2003-2021': ({ recent }) => recent !== null,
  '1981-2010': ({ period }) => period === '1981-2010',
  rain: ({ rainMm }) => rainMm !== null,
  vapor: ({ vaporHpa }) => vaporHpa !== null,
  spread: ({ spread }) => spread !== null,
  spring: ({ factors }) => (factors?.spring ?? null) !== null,
  fall: ({ factors }) => (factors?.fall ?? null) !== null,
  winter: ({ factors }) => (factors?.winter ?? null) !== null,
} as const satisfies Record<string, (station: NetworkStation) => boolean>;

/** Means of one of the periods, or another figure not every station has. */
export type FigureKind = keyof typeof has;

export interface StationNetwork {
  readonly stations: readonly NetworkStation[];
  /** The stations that have each kind of figure, with an index of their positions for the search of the nearest. */
  readonly having: Readonly<Record<FigureKind, { stations: readonly NetworkStation[]; positions: KDBush }>>;
}

export interface Neighbor {
  readonly station: NetworkStation;
  readonly km: number;
}

function positionsOf(stations: readonly Position[]): KDBush {
  const positions = new KDBush(stations.length);
  for (const { lat, lon } of stations) positions.add(lon, lat);
  return positions.finish();
}

/** Makes a network of stations. Takes about a tenth of a second for nine thousand. */
export function stationNetwork(tables: readonly Station[]): StationNetwork {
  const changes = recentChanges(tables);
  const spreads = believableSpreads(tables);
  const stations = tables.map((station, i) => {
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
  });
  const having = (kind: FigureKind) => {
    const found = stations.filter(has[kind]);
    return { stations: found, positions: positionsOf(found) };
  };
  return {
    stations,
    having: {
      '2003-2021': having('2003-2021'),
      '1981-2010': having('1981-2010'),
      rain: having('rain'),
      vapor: having('vapor'),
      spread: having('spread'),
      spring: having('spring'),
      fall: having('fall'),
      winter: having('winter'),
    },
  };
}

export interface NeighborWish {
  /** What the stations must have figures of. */
  readonly having: FigureKind;
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

/** The nearest stations, nearest first; those equally far in the order of the tables. */
export function neighborsOf(network: StationNetwork, point: Position, wish: NeighborWish): Neighbor[] {
  const { stations, positions } = network.having[wish.having];
  const at = (index: number) => stations[index] as NetworkStation;
  const counts =
    wish.leaveOutKm > 0 ? (index: number) => kmBetween(point, at(index)) >= wish.leaveOutKm : undefined;
  const found = around(positions, point.lon, point.lat, wish.most, wish.farthestKm, counts)
    .map(index => ({ index, station: at(index), km: kmBetween(point, at(index)) }))
    .sort((a, b) => a.km - b.km || a.index - b.index);
  const beyond = found.findIndex(({ km }, rank) => rank >= wish.least && km > wish.withinKm);
  return found.slice(0, beyond < 0 ? found.length : beyond).map(({ station, km }) => ({ station, km }));
}
