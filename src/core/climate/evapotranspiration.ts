/** Reference evapotranspiration: the water a short green lawn gives off. Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56. */

import { declinationFao56, sunsetHourAngleFao56 } from './dayLength.ts';

/** MJ per square meter and minute, FAO-56 equation 21. */
const SOLAR_CONSTANT = 0.082;
const MINUTES_PER_DAY = 1440;
/** Millimeters of water that a MJ per square meter turns to vapor, FAO-56 equation 20. */
const MM_PER_MJ = 0.408;

/** Radiation above the atmosphere, MJ per square meter and day. FAO-56 equations 21 and 23. */
export function extraterrestrialRadiation(lat: number, doy: number): number {
  const phi = (lat * Math.PI) / 180;
  const declination = declinationFao56(doy);
  const sunset = sunsetHourAngleFao56(lat, doy);
  const distance = 1 + 0.033 * Math.cos((2 * Math.PI * doy) / 365);
  return (
    (MINUTES_PER_DAY / Math.PI) *
    SOLAR_CONSTANT *
    distance *
    (sunset * Math.sin(phi) * Math.sin(declination) +
      Math.cos(phi) * Math.cos(declination) * Math.sin(sunset))
  );
}

/**
 * Reference evapotranspiration from temperatures alone, mm a day: Hargreaves, FAO-56 equation 52. Runs low in dry wind, as in deserts, and
 * high in damp air.
 */
export function hargreavesEtoMm(lat: number, doy: number, tminC: number, tmaxC: number): number {
  const meanC = (tminC + tmaxC) / 2;
  const radiationMm = MM_PER_MJ * extraterrestrialRadiation(lat, doy);
  return Math.max(0, 0.0023 * (meanC + 17.8) * Math.sqrt(Math.max(0, tmaxC - tminC)) * radiationMm);
}
