/** Day-to-day spread of Tmin and Tmax about the daily curve: as given, or estimated from the monthly means. */
import { monthLengths } from './calendar.ts';
import { cosTurn } from './circle.ts';
import { dailyCurve, linearCurve } from './dailyCurve.ts';
import type { ClimateFigures } from './figures.ts';

/** Goes into the seed of places whose spread is estimated, so that a change of the estimate never passes for a change of the weather. */
export const ESTIMATE_VERSION = 'estimate 2';

/** Coefficients of one month: constant, mean temperature of the month, mean daily range, warmest minus coldest month, |latitude|. */
type SpreadFit = readonly [number, number, number, number, number];

/**
 * Fit of the standard deviation of daily values within a month on 274 places of the United States (USDA CLIGEN station
 * files and daily records). Five-fold cross-validated mean error 0.51 C for Tmin and 0.49 C for Tmax. Standing: ours.
 */
const tminFit: readonly SpreadFit[] = [
  [8.6421, -0.1299, 0.0073, 0.0303, -0.0864],
  [10.6276, -0.1525, -0.0256, 0.0635, -0.1468],
  [9.7407, -0.1072, -0.0462, 0.1391, -0.1668],
  [7.0528, -0.0501, -0.0368, 0.1409, -0.1229],
  [3.1959, -0.0266, -0.0268, 0.1355, -0.0393],
  [0.1776, -0.0076, 0.021, 0.0972, 0.022],
  [-1.2247, -0.0101, 0.0039, 0.0621, 0.0698],
  [-0.7994, -0.0198, -0.0086, 0.0834, 0.0616],
  [2.3528, -0.0391, -0.0313, 0.1461, -0.0125],
  [8.4802, -0.0609, -0.0629, 0.1226, -0.1297],
  [10.5402, -0.0999, -0.0603, 0.0977, -0.1589],
  [11.2129, -0.138, -0.0759, 0.0537, -0.1478],
];
const tmaxFit: readonly SpreadFit[] = [
  [4.3295, -0.0383, 0.0679, 0.1492, -0.058],
  [5.3472, -0.0476, 0.0566, 0.1528, -0.087],
  [4.9764, -0.0608, 0.0375, 0.1768, -0.081],
  [1.5465, -0.0598, 0.0451, 0.1396, 0.0238],
  [-1.2053, -0.0398, 0.0836, 0.0745, 0.1017],
  [-2.9423, -0.0018, 0.1173, 0.0082, 0.1394],
  [-3.5894, 0.0417, 0.0525, -0.0111, 0.1425],
  [-4.3021, 0.0526, 0.0617, 0.0086, 0.1437],
  [-1.3552, -0.0183, 0.1046, 0.0555, 0.0944],
  [1.108, -0.0538, 0.0967, 0.0881, 0.0393],
  [6.8221, -0.1123, 0.0398, 0.1261, -0.0941],
  [7.4439, -0.1087, 0.042, 0.098, -0.1042],
];

/**
 * Fits for all months outside those latitudes, on the spread worked out from monthly CLIMAT reports (Deutscher Wetterdienst, 2003-2021). Toward
 * the equator 494 stations up to latitude 25, by least absolute deviations, since reports there carry faults: mean error 0.62 C for Tmin and
 * 0.70 C for Tmax, where the fit above errs by 1.1 and 1.0. Toward the poles 586 stations from latitude 48: 0.71 and 0.55 C for 1.0 and 1.0.
 * Standing: ours.
 */
const equatorFits = {
  tmin: [2.3656, -0.0347, 0.0663, 0.0276, 0.0094],
  tmax: [1.9603, -0.0498, 0.0964, 0.0604, 0.0097],
} as const satisfies Record<string, SpreadFit>;
const polarFits = {
  tmin: [6.3903, -0.1183, 0.0603, 0.0331, -0.0462],
  tmax: [3.781, -0.0973, 0.1576, 0.0342, -0.01],
} as const satisfies Record<string, SpreadFit>;

/** Latitudes between which the fits hand over to each other, and the one the polar fit is held at. */
const EQUATOR_FIT_TO = 20;
const FIT_LAT_FROM = 28;
const FIT_LAT_TO = 48;
/** Latitudes of the stations of the middle fit. */
const FIT_BOTTOM_LAT = 25;
const FIT_TOP_LAT = 50;
const POLAR_FIT_FROM = 54;
const POLAR_FIT_HELD = 65;

/** Shares of the equator's and the poles' fit at a latitude; the rest is that of the middle latitudes. */
function sharesAt(lat: number): { equator: number; polar: number } {
  const ramp = (from: number, to: number) => Math.min(1, Math.max(0, (lat - from) / (to - from)));
  return { equator: 1 - ramp(EQUATOR_FIT_TO, FIT_LAT_FROM), polar: ramp(FIT_LAT_TO, POLAR_FIT_FROM) };
}
/** Smallest spread ever used, C: no station of the fit comes near it. */
export const SMALLEST_SPREAD_C = 1.2;

/**
 * How many standard deviations of the coldest month the mean coldest night of a winter lies below that month's mean minimum: the middle
 * of the model's own ratio at 34 stations (1.77 to 2.19).
 */
const COLDEST_NIGHT_SPREADS = 1.95;
/** Bounds on what a published coldest night may do to an estimate: no station of the fit is further from it. Standing: ours. */
const LEAST_RATIO = 0.5;
const GREATEST_RATIO = 1.4;

/**
 * Ratio by which the estimated spread of Tmin misses a published mean coldest night of the winter; 1 where none is published. At 28 long
 * records with their spread withheld this takes the error of the middle first freeze at 32 F from 7.1 to 5.6 days, of the last from 8.3 to 7.3.
 */
function missedByColdestNight({ tminC, published }: ClimateFigures, estimate: readonly number[]): number {
  if (published.annualMin === null) return 1;
  const coldestMean = Math.min(...tminC);
  const spread = (coldestMean - published.annualMin.meanC) / COLDEST_NIGHT_SPREADS;
  const ratio = spread / (estimate[tminC.indexOf(coldestMean)] as number);
  return Math.min(GREATEST_RATIO, Math.max(LEAST_RATIO, ratio));
}

/**
 * Estimated monthly standard deviations of daily Tmin or Tmax about the month's mean, C. That of Tmin is brought in line with the
 * coldest night of the winter where that is published.
 */
export function estimatedSpread(figures: ClimateFigures, of: 'tmin' | 'tmax'): number[] {
  const means = figures.tmaxC.map((high, month) => (high + (figures.tminC[month] as number)) / 2);
  const yearlyRange = Math.max(...means) - Math.min(...means);
  const lat = Math.min(POLAR_FIT_HELD, Math.abs(figures.lat));
  const { equator, polar } = sharesAt(lat);
  const fit = of === 'tmin' ? tminFit : tmaxFit;
  const estimate = means.map((mean, month) => {
    const northernMonth = figures.lat < 0 ? (month + 6) % 12 : month;
    const dailyRange = (figures.tmaxC[month] as number) - (figures.tminC[month] as number);
    const by = ([b0, b1, b2, b3, b4]: SpreadFit, at: number) =>
      b0 + b1 * mean + b2 * dailyRange + b3 * yearlyRange + b4 * at;
    const middle = by(fit[northernMonth] as SpreadFit, Math.min(FIT_TOP_LAT, Math.max(FIT_BOTTOM_LAT, lat)));
    const spread =
      equator * by(equatorFits[of], lat) + polar * by(polarFits[of], lat) + (1 - equator - polar) * middle;
    return Math.max(SMALLEST_SPREAD_C, spread);
  });
  const ratio = of === 'tmin' ? missedByColdestNight(figures, estimate) : 1;
  const coldest = figures.tminC.indexOf(Math.min(...figures.tminC));
  return estimate.map((sd, month) => {
    // The coldest night says much of the winter months and nothing of the other half of the year.
    const weight = Math.sqrt(Math.max(0, cosTurn((month - coldest) / 12)));
    return Math.max(SMALLEST_SPREAD_C, sd * (1 + weight * (ratio - 1)));
  });
}

/** Takes the drift of the season through each month out of standard deviations taken about the month's mean. */
export function spreadAboutCurve(monthlySdC: readonly number[], curve: Float64Array): number[] {
  let from = 0;
  return monthlySdC.map((sd, month) => {
    const days = curve.subarray(from, from + (monthLengths[month] as number));
    from += days.length;
    const mean = days.reduce((sum, value) => sum + value, 0) / days.length;
    const drift = days.reduce((sum, value) => sum + (value - mean) ** 2, 0) / days.length;
    return Math.sqrt(Math.max(SMALLEST_SPREAD_C ** 2, sd * sd - drift));
  });
}

export interface DailyNormals {
  /** Mean of the day, C, by `doy - 1`. */
  readonly meanC: Float64Array;
  /** Standard deviation about it, C, by `doy - 1`. */
  readonly sdC: Float64Array;
}

/** Daily mean and spread of Tmin or Tmax. */
export function dailyNormals(figures: ClimateFigures, of: 'tmin' | 'tmax'): DailyNormals {
  const meanC = dailyCurve(of === 'tmin' ? figures.tminC : figures.tmaxC);
  const given = of === 'tmin' ? figures.sdTminC : figures.sdTmaxC;
  const monthly =
    given !== null && figures.sdAbout === 'curve'
      ? given
      : spreadAboutCurve(given ?? estimatedSpread(figures, of), meanC);
  return { meanC, sdC: linearCurve(monthly) };
}
