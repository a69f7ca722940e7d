/** Weather years of any point for comparing observations: from the stations around it, or from far ones where none are near. */
import { type NetworkStation, neighborsOf, type StationNetwork } from '../../climate/anywhere/network.ts';
import { climateFigures, figuresAt } from '../../climate/anywhere/pointFigures.ts';
import { type ClimateFigures, nothingPublished } from '../../climate/figures.ts';
import { type WeatherYears, weatherYears } from '../../climate/weatherYears.ts';
import type { Point } from './observation.ts';

/** Years drawn for a point: a middle date is then good to a day. Standing: ours. */
const POINT_YEARS = 120;
/** Stations taken where none is near enough for a regression, and how far away they may be. Standing: ours. */
const FAR_STATIONS = 4;
const FAR_KM = 900;
/** Fall of temperature with height, C per m, and toward the pole, C per degree. Standing: common practice, no source. */
const LAPSE_C_PER_M = 0.006;
const POLEWARD_C_PER_DEGREE = 0.6;

interface PointClimate {
  readonly years: WeatherYears;
  /** Why the figures are poor; null where stations speak for the point. */
  readonly poor: string | null;
}

function shiftC({ lat, elevationM }: Point, station: NetworkStation): number {
  return (
    LAPSE_C_PER_M * (station.elevationM - elevationM) +
    POLEWARD_C_PER_DEGREE * (Math.abs(station.lat) - Math.abs(lat))
  );
}

/** Means of far stations moved to the height and latitude of the point, the near ones counting more; null where there are none. */
function figuresFromFar(
  network: StationNetwork,
  point: Point,
): { figures: ClimateFigures; km: number } | null {
  const near = neighborsOf(network, point, {
    having: '2003-2021',
    most: FAR_STATIONS,
    least: FAR_STATIONS,
    withinKm: FAR_KM,
    farthestKm: FAR_KM,
    leaveOutKm: 0,
  });
  const [first] = near;
  if (first === undefined) return null;
  const total = near.reduce((sum, { km }) => sum + 1 / (km + 1), 0);
  const mean = (name: 'tminC' | 'tmaxC') =>
    Array.from({ length: 12 }, (_, month) =>
      near.reduce((sum, { station, km }) => {
        const at = (station.recent?.[name][month] ?? 0) + shiftC(point, station);
        return sum + at / (km + 1) / total;
      }, 0),
    );
  return {
    km: first.km,
    figures: {
      lat: point.lat,
      tminC: mean('tminC'),
      tmaxC: mean('tmaxC'),
      sdTminC: null,
      sdTmaxC: null,
      sdAbout: 'month',
      lag1: null,
      rainMm: null,
      dewPointC: null,
      published: nothingPublished,
    },
  };
}

export type ClimateAt = (point: Point) => PointClimate | { readonly refused: string };

/** A function that gives the climate of a point, drawn once for each. */
export function climateAt(network: StationNetwork): ClimateAt {
  const kept = new Map<string, ReturnType<ClimateAt>>();
  function made(point: Point): ReturnType<ClimateAt> {
    const found = figuresAt(network, point);
    if (found.refused === undefined) {
      return { years: weatherYears(climateFigures(found), POINT_YEARS), poor: null };
    }
    const far = figuresFromFar(network, point);
    if (far === null) return { refused: found.refused };
    const km = Math.round(far.km);
    const poor =
      km < 1
        ? 'too few stations near for an error to be told'
        : `too few stations near; the nearest that helped is ${km} km away`;
    return { years: weatherYears(far.figures, POINT_YEARS), poor };
  }
  return point => {
    const key = `${point.lat} ${point.lon} ${point.elevationM}`;
    const known = kept.get(key) ?? made(point);
    kept.set(key, known);
    return known;
  };
}
