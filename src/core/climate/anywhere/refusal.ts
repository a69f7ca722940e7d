/** When the stations cannot speak for a point, and what is said then. */

import type { Neighbor } from './network.ts';
import type { Point } from './samples.ts';
import type { StationPeriod } from './station.ts';

/** Fewest stations an answer rests on, and how near the nearest must be. Standing: ours. */
const FEWEST_STATIONS = 3;
const NEAREST_WITHIN_KM = 200;
/** How far a point may lie above the highest or below the lowest station around it, m. Standing: ours. */
const HEIGHT_MARGIN_M = 400;
const HIGHEST_M = 6000;
const LOWEST_M = -450;

const METERS_PER_FOOT = 0.3048;

const km = (value: number) => `${Math.round(value).toLocaleString('en')} km`;
const m = (value: number) => `${Math.round(value).toLocaleString('en')} m`;

/** Said when a height that makes no sense would make sense in feet. */
function feetHint(elevationM: number, fits: (meters: number) => boolean): string {
  const meters = elevationM * METERS_PER_FOOT;
  return fits(meters)
    ? ` Is the height in feet? ${Math.round(elevationM).toLocaleString('en')} ft are ${m(meters)}.`
    : '';
}

/** Why nothing can be said of a point, in words; null when something can. */
export function refusalOf(
  { lat, lon, elevationM }: Point,
  neighbors: readonly Neighbor[],
  period: StationPeriod,
): string | null {
  if (!(Math.abs(lat) <= 90)) return `Latitude ${lat} is outside -90 to 90.`;
  if (!(Math.abs(lon) <= 180)) return `Longitude ${lon} is outside -180 to 180.`;
  if (!Number.isFinite(elevationM)) return 'The height is not a number of meters.';
  const nearest = neighbors[0];
  if (nearest === undefined || nearest.km > NEAREST_WITHIN_KM || neighbors.length < FEWEST_STATIONS) {
    const only =
      period === '1981-2010' ? ' of the normals 1981-2010, which are of the United States only' : '';
    if (nearest === undefined) return `No station${only} lies within 400 km.`;
    return nearest.km > NEAREST_WITHIN_KM
      ? `The nearest station${only} is ${km(nearest.km)} away (${nearest.station.name}); ${km(NEAREST_WITHIN_KM)} is the most that can be bridged.`
      : `Only ${neighbors.length === 1 ? 'one station' : `${neighbors.length} stations`}${only} within 400 km; ${FEWEST_STATIONS} are needed.`;
  }
  const heights = neighbors.map(({ station }) => station.elevationM);
  const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
  const fits = (meters: number) =>
    meters >= Math.max(LOWEST_M, lowest - HEIGHT_MARGIN_M) &&
    meters <= Math.min(HIGHEST_M, highest + HEIGHT_MARGIN_M);
  if (fits(elevationM)) return null;
  return `A height of ${m(elevationM)} is too far from the stations around: they lie between ${m(lowest)} and ${m(highest)}.${feetHint(elevationM, fits)}`;
}
