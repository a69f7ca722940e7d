/**
 * The climate figures of any point, from stations around it.
 *
 * `figuresAt(network, { lat, lon, elevationM })` gives twelve months of everything the model needs, with its own error, or a refusal in
 * words; `climateFigures(answer)` makes `ClimateFigures` of it for `climateSummary` and `weatherYears`. The network comes from
 * `stationNetwork(readStations())`, `readStations` being in `src/stations/read.ts`. Pure and the same on every run; a few milliseconds a point.
 */

import { SMALLEST_SPREAD_C } from '../dailySpread.ts';
import { type ClimateFigures, nothingPublished } from '../figures.ts';
import { localValues, type RegressionSettings } from './localRegression.ts';
import {
  type FigureKind,
  type Neighbor,
  type NetworkStation,
  neighborsOf,
  type StationNetwork,
} from './network.ts';
import { refusalOf } from './refusal.ts';
import { type Point, samplesOf, temperaturesAtHeight } from './samples.ts';
import { anchorsOf, type SeasonFactors, withFactors } from './seasonFactors.ts';
import type { StationPeriod } from './station.ts';

export interface PointRequest extends Point {
  /** Period of the means; 2003-2021 unless asked otherwise. 1981-2010 is known in the United States only. */
  readonly period?: StationPeriod;
  /** Stations closer than this do not count, km: to try the method where the answer is known. */
  readonly leaveOutKm?: number;
  /** The spread as reported, without the season factors of the stations around. */
  readonly unfactored?: boolean;
}

/** Mean absolute errors, found by leaving out in turn each station around the point. */
interface PointErrors {
  /** Of a monthly mean, C. */
  readonly tminC: number;
  readonly tmaxC: number;
}

export interface PointFigures extends Point {
  readonly refused?: undefined;
  readonly period: StationPeriod;
  /** Twelve months, January first, C. */
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  readonly rainMm: readonly number[] | null;
  readonly dewPointC: readonly number[] | null;
  /** Standard deviation of daily values about the month's mean, C; null where no station near reports it. */
  readonly sdTminC: readonly number[] | null;
  readonly sdTmaxC: readonly number[] | null;
  readonly errors: PointErrors;
  /** Stations used for the means, nearest first. */
  readonly stations: readonly Neighbor[];
}

/** What a point with no stations to speak for it gets. */
export interface PointRefusal {
  /** Why, in words for people. */
  readonly refused: string;
}

/** How stations count for each kind of figure. Chosen by the errors at US stations left out in turn. Standing: ours. */
const temperature: RegressionSettings = {
  halfWeightKm: 0.25,
  ridgePosition: 0.02,
  ridgeHeight: 0.01,
  departureKm: 8,
};
const smooth: RegressionSettings = {
  halfWeightKm: 0.6,
  ridgePosition: 0.2,
  ridgeHeight: 0.1,
  departureKm: 25,
};

const MOST_STATIONS = 40;
/** Always so many, however far within reach; more only where they are near. */
const LEAST_STATIONS = 12;
const NEAR_KM = 150;
const REACH_KM = 400;
const SPREAD_REACH_KM = 900;
const FACTOR_REACH_KM = 300;
const FACTOR_STATIONS = 16;
const FEWEST_STATIONS = 3;

/** At a station itself its own figures stand; they lose their say over this distance and difference in height. */
const OWN_KM = 5;
const OWN_M = 30;

function means(station: NetworkStation, period: StationPeriod) {
  if (period === '2003-2021') return station.recent;
  return station.period === period ? station : null;
}

/** The stations a point's means are taken from, nearest first. */
function temperatureNeighbors(network: StationNetwork, request: PointRequest): Neighbor[] {
  const period = request.period ?? '2003-2021';
  return neighborsOf(network, request, {
    having: period,
    most: MOST_STATIONS,
    least: LEAST_STATIONS,
    withinKm: NEAR_KM,
    farthestKm: REACH_KM,
    leaveOutKm: request.leaveOutKm ?? 0,
  });
}

/** Twelve minima and twelve maxima of the point. */
function temperaturesFrom(point: Point, neighbors: readonly Neighbor[], period: StationPeriod): number[] {
  const fitted = localValues(
    samplesOf(point, neighbors, (station, aboveKm) => {
      const of = means(station, period);
      return of && temperaturesAtHeight(of, aboveKm);
    }),
    temperature,
  );
  const nearest = neighbors[0];
  const of = nearest && means(nearest.station, period);
  if (!nearest || !of || nearest.km >= OWN_KM) return fitted;
  const aboveM = nearest.station.elevationM - point.elevationM;
  const say = (1 - nearest.km / OWN_KM) ** 2 / (1 + (aboveM / OWN_M) ** 2);
  const own = temperaturesAtHeight(of, aboveM / 1000);
  return fitted.map((value, i) => value + say * ((own[i] as number) - value));
}

const known = new WeakMap<StationNetwork, Map<string, PointErrors>>();

/** Errors of the method at one station, were its own figures not known. */
function errorsAt(
  network: StationNetwork,
  station: NetworkStation,
  period: StationPeriod,
): PointErrors | null {
  const kept = known.get(network) ?? new Map<string, PointErrors>();
  known.set(network, kept);
  const key = `${period} ${station.id}`;
  const before = kept.get(key);
  if (before) return before;
  const of = means(station, period);
  const neighbors = temperatureNeighbors(network, { ...station, period, leaveOutKm: 0.5 });
  if (!of || neighbors.length < FEWEST_STATIONS) return null;
  const got = temperaturesFrom(station, neighbors, period);
  const mean = (from: number, values: readonly number[]) =>
    values.reduce((sum, value, month) => sum + Math.abs(value - (got[from + month] as number)), 0) / 12;
  const errors = { tminC: mean(0, of.tminC), tmaxC: mean(12, of.tmaxC) };
  kept.set(key, errors);
  return errors;
}

/** Stations the error of a point is taken from. */
const ERROR_STATIONS = 12;
/** No estimate is better than this: thermometers in one town differ by so much. Standing: ours. */
const LEAST_ERROR_C = 0.3;
/** Where the stations are so few that none can be left out. Standing: ours. */
const LONELY_ERROR_C = 1.5;

function pointErrors(
  network: StationNetwork,
  neighbors: readonly Neighbor[],
  period: StationPeriod,
): PointErrors {
  const errors = neighbors
    .slice(0, ERROR_STATIONS)
    .flatMap(({ station }) => errorsAt(network, station, period) ?? []);
  if (errors.length === 0) return { tminC: LONELY_ERROR_C, tmaxC: LONELY_ERROR_C };
  const mean = (of: keyof PointErrors) =>
    Math.max(LEAST_ERROR_C, errors.reduce((sum, each) => sum + each[of], 0) / errors.length);
  return { tminC: mean('tminC'), tmaxC: mean('tmaxC') };
}

/** Fall of the logarithm of vapor pressure with height, per km: half of it is gone at about 1.7 km. Standing: ours, from memory. */
const VAPOR_LAPSE = 0.4;

/** Dew point of a vapor pressure, C. Source: FAO-56, equation 11, turned round. */
function dewPointOfHpa(hpa: number): number {
  const log = Math.log(hpa / 6.108);
  return (237.3 * log) / (17.27 - log);
}

function smoothValues(
  network: StationNetwork,
  request: PointRequest,
  wish: { having: FigureKind; farthestKm: number; most: number },
  read: (station: NetworkStation, aboveKm: number) => readonly number[] | null,
): number[] | null {
  const neighbors = neighborsOf(network, request, {
    ...wish,
    least: wish.most,
    withinKm: wish.farthestKm,
    leaveOutKm: request.leaveOutKm ?? 0,
  });
  if (neighbors.length === 0) return null;
  return localValues(samplesOf(request, neighbors, read), smooth);
}

/** The season factors of the stations around, 1 where none is near that observed any. */
function factorsAt(network: StationNetwork, request: PointRequest): SeasonFactors {
  const factor = (season: keyof SeasonFactors) => {
    const wish = { having: season, farthestKm: FACTOR_REACH_KM, most: FACTOR_STATIONS };
    return (
      smoothValues(network, request, wish, ({ factors }) => {
        const value = factors?.[season] ?? null;
        return value === null ? null : [value];
      })?.[0] ?? 1
    );
  };
  return { spring: factor('spring'), fall: factor('fall'), winter: factor('winter') };
}

function spreadAt(network: StationNetwork, request: PointRequest, tminC: readonly number[]) {
  const wish = { having: 'spread', farthestKm: SPREAD_REACH_KM, most: 10 } as const;
  const spread = smoothValues(network, request, wish, ({ spread }) =>
    spread === null ? null : [...spread.tminC, ...spread.tmaxC],
  );
  if (spread === null) return { sdTminC: null, sdTmaxC: null };
  const kept = spread.map(sd => Math.max(SMALLEST_SPREAD_C, sd));
  const sdTminC = kept.slice(0, 12);
  return {
    sdTminC: request.unfactored
      ? sdTminC
      : withFactors(sdTminC, factorsAt(network, request), anchorsOf(tminC, sdTminC)),
    sdTmaxC: kept.slice(12),
  };
}

/** The climate of a point, or why nothing can be said of it. */
export function figuresAt(network: StationNetwork, request: PointRequest): PointFigures | PointRefusal {
  const period = request.period ?? '2003-2021';
  const neighbors = temperatureNeighbors(network, request);
  const refused = refusalOf(request, neighbors, period);
  if (refused !== null) return { refused };
  const temperatures = temperaturesFrom(request, neighbors, period);
  const [tminC, tmaxC] = [temperatures.slice(0, 12), temperatures.slice(12)];
  // Where a day hardly warms, noise must not turn it round.
  tmaxC.forEach((high, month) => {
    tmaxC[month] = Math.max(high, (tminC[month] as number) + 0.5);
  });
  const rainRoots = smoothValues(
    network,
    request,
    { having: 'rain', farthestKm: REACH_KM, most: 16 },
    ({ rainMm }) => rainMm?.map(Math.sqrt) ?? null,
  );
  const vapor = smoothValues(
    network,
    request,
    { having: 'vapor', farthestKm: SPREAD_REACH_KM, most: 8 },
    ({ vaporHpa }, aboveKm) =>
      vaporHpa === null ? null : vaporHpa.map(hpa => Math.log(Math.max(0.2, hpa)) + VAPOR_LAPSE * aboveKm),
  );
  return {
    lat: request.lat,
    lon: request.lon,
    elevationM: request.elevationM,
    period,
    tminC,
    tmaxC,
    rainMm: rainRoots?.map(root => Math.max(0, root) ** 2) ?? null,
    dewPointC: vapor?.map(log => dewPointOfHpa(Math.exp(log))) ?? null,
    ...spreadAt(network, request, tminC),
    errors: pointErrors(network, neighbors, period),
    stations: neighbors,
  };
}

/** What the model draws weather years of. */
export function climateFigures(point: PointFigures): ClimateFigures {
  const { lat, tminC, tmaxC, rainMm, dewPointC, sdTminC, sdTmaxC } = point;
  return {
    lat,
    tminC,
    tmaxC,
    rainMm,
    dewPointC,
    sdTminC,
    sdTmaxC,
    sdAbout: 'month',
    lag1: null,
    published: nothingPublished,
  };
}
