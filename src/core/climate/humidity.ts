/** Vapor pressure and its deficit. Source: Allen et al. 1998, FAO Irrigation and Drainage Paper 56, chapter 3. */

/** Saturation vapor pressure at an air temperature, kPa (equation 11). */
export function saturationKpa(tC: number): number {
  return 0.6108 * Math.exp((17.27 * tC) / (tC + 237.3));
}

/** Mean saturation vapor pressure of a day, kPa: the mean at its extremes, not at its mean (equation 12). */
export function meanSaturationKpa(tminC: number, tmaxC: number): number {
  return (saturationKpa(tmaxC) + saturationKpa(tminC)) / 2;
}

/** What is known of the air's moisture; relative humidities in percent. */
export type Moisture =
  | { readonly dewPointC: number }
  | { readonly rhMax: number; readonly rhMin: number }
  | { readonly rhMax: number }
  | { readonly rhMean: number };

/** Actual vapor pressure of a day, kPa (equations 14 and 17 to 19, best known figure first). */
export function actualKpa(tminC: number, tmaxC: number, moisture: Moisture): number {
  if ('dewPointC' in moisture) return saturationKpa(moisture.dewPointC);
  if ('rhMin' in moisture) {
    return (saturationKpa(tminC) * moisture.rhMax + saturationKpa(tmaxC) * moisture.rhMin) / 200;
  }
  if ('rhMax' in moisture) return (saturationKpa(tminC) * moisture.rhMax) / 100;
  return (meanSaturationKpa(tminC, tmaxC) * moisture.rhMean) / 100;
}

/** Vapor pressure deficit of a day, kPa, never below 0. */
export function vaporDeficitKpa(tminC: number, tmaxC: number, moisture: Moisture): number {
  return Math.max(0, meanSaturationKpa(tminC, tmaxC) - actualKpa(tminC, tmaxC, moisture));
}
