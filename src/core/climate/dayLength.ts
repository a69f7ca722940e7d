/** Day length and times of sunrise and sunset, in solar time. The only place where the sign of the latitude matters. */

const RADIANS = Math.PI / 180;

/** Half the day as an hour angle, radians, 0 to pi: 0 in the polar night, pi under the midnight sun. */
function clampedAcos(cosine: number): number {
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/** Solar declination, radians. Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, equation 24. */
export function declinationFao56(doy: number): number {
  return 0.409 * Math.sin((2 * Math.PI * doy) / 365 - 1.39);
}

/** Sunset hour angle, radians. Source: FAO-56, equation 25. */
export function sunsetHourAngleFao56(lat: number, doy: number): number {
  return clampedAcos(-Math.tan(lat * RADIANS) * Math.tan(declinationFao56(doy)));
}

/** Day length in hours, of the sun's center and without refraction. Source: FAO-56, equation 34. */
export function dayLengthFao56(lat: number, doy: number): number {
  return (24 / Math.PI) * sunsetHourAngleFao56(lat, doy);
}

/** Height of the sun's center when its upper edge is on the horizon, with refraction, degrees (Almorox et al. 2005). */
const SUNRISE_HEIGHT = -0.8333;

/** Solar declination, radians. Source: Spencer 1971, Search 2(5):172. */
function declinationSpencer(doy: number): number {
  const turn = (2 * Math.PI * (doy - 1)) / 365;
  return (
    0.006918 -
    0.399912 * Math.cos(turn) +
    0.070257 * Math.sin(turn) -
    0.006758 * Math.cos(2 * turn) +
    0.000907 * Math.sin(2 * turn) -
    0.002697 * Math.cos(3 * turn) +
    0.00148 * Math.sin(3 * turn)
  );
}

export interface SunTimes {
  /** Hours after solar midnight: 12 in the polar night, 0 under the midnight sun. */
  readonly sunrise: number;
  readonly sunset: number;
  /** Hours from one to the other, 0 to 24. */
  readonly dayLength: number;
}

/** Sunrise, sunset and day length as seen: upper edge of the sun, refraction included. For hourly temperatures. */
export function sunTimes(lat: number, doy: number): SunTimes {
  const declination = declinationSpencer(doy);
  const sinPart = Math.sin(SUNRISE_HEIGHT * RADIANS) - Math.sin(lat * RADIANS) * Math.sin(declination);
  const half = clampedAcos(sinPart / (Math.cos(lat * RADIANS) * Math.cos(declination))) / RADIANS / 15;
  return { sunrise: 12 - half, sunset: 12 + half, dayLength: 2 * half };
}
