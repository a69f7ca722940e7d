/** How far two places lie apart. */

/** Mean radius of the Earth, km. Source: IUGG, Geodetic Reference System 1980. */
const EARTH_RADIUS_KM = 6371.0088;

export interface Position {
  /** Degrees, south and west negative. */
  readonly lat: number;
  readonly lon: number;
}

/** Great-circle distance, km, by the haversine formula. The Earth taken as a ball: good to 0.5 %. */
export function kmBetween(a: Position, b: Position): number {
  const radians = Math.PI / 180;
  const half = (degrees: number) => Math.sin((degrees * radians) / 2) ** 2;
  const across = Math.cos(a.lat * radians) * Math.cos(b.lat * radians) * half(b.lon - a.lon);
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(half(b.lat - a.lat) + across)));
}
