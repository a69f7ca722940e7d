/** The spread of daily minima and maxima from the spread of daily means that the monthly reports give. */

import { cosTurn, sinTurn } from '../circle.ts';
import { SMALLEST_SPREAD_C } from '../dailySpread.ts';
import { saturationKpa } from '../humidity.ts';

/** Standard deviations of daily values about the month's mean, C. */
export interface MonthlySpread {
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
}

interface Reported {
  /** Degrees north. */
  readonly lat: number;
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  /** Standard deviation of daily means within the month, C. */
  readonly sdMeanC: readonly number[] | null;
  readonly vaporHpa: readonly number[] | null;
}

/**
 * Coefficients of: one; the spread of daily means s; s times the daily range over 10 C; mean temperature over 10 C; cosine and sine of the
 * season; relative humidity h (0 to 1); s times h.
 */
type Fit = readonly [number, number, number, number, number, number, number, number];

/**
 * Fitted on 180 US places that have both the reports and CLIGEN's standard deviations of daily values (USDA-ARS). Ten-fold mean error
 * 0.47 C for minima and 0.41 C for maxima, on means of 4.5 and 5.0 C. Nights are steadier than days where the air is damp. Standing: ours.
 */
const TMIN_FIT: Fit = [2.7905, -0.0425, 0.0466, 0.0167, 0.3047, -0.125, -2.235, 1.1726];
const TMAX_FIT: Fit = [2.1989, 1.0096, 0.1041, -0.372, -0.2278, 0.0374, -0.8056, -0.2091];
/** Where a station reports no vapor pressure. */
const USUAL_HUMIDITY = 0.7;
/** Toward the equator the seasons fade. */
const SEASONS_FROM_LAT = 25;

function humidity({ tminC, tmaxC, vaporHpa }: Reported, month: number): number {
  const hpa = vaporHpa?.[month];
  if (hpa === undefined) return USUAL_HUMIDITY;
  const middle = ((tminC[month] as number) + (tmaxC[month] as number)) / 2;
  return Math.min(1, hpa / (10 * saturationKpa(middle)));
}

/** Null for a station whose reports give no spread. */
export function spreadFromReports(reported: Reported): MonthlySpread | null {
  const { lat, tminC, tmaxC, sdMeanC } = reported;
  if (sdMeanC === null) return null;
  const seasons = Math.min(1, Math.abs(lat) / SEASONS_FROM_LAT);
  const by = (fit: Fit) =>
    sdMeanC.map((sd, month) => {
      const [low, high] = [tminC[month] as number, tmaxC[month] as number];
      const turn = (month - 0.5 + (lat < 0 ? 6 : 0)) / 12;
      const damp = humidity(reported, month);
      const terms = [
        1,
        sd,
        (sd * (high - low)) / 10,
        (low + high) / 20,
        seasons * cosTurn(turn),
        seasons * sinTurn(turn),
        damp,
        sd * damp,
      ];
      const fitted = terms.reduce((sum, term, i) => sum + term * (fit[i] as number), 0);
      return Math.max(SMALLEST_SPREAD_C, fitted);
    });
  return { tminC: by(TMIN_FIT), tmaxC: by(TMAX_FIT) };
}
