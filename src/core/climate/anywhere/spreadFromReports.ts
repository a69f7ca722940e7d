/** The spread of daily minima and maxima from the spread of daily means that the monthly reports give. */

import { SMALLEST_SPREAD_C } from '../dailySpread.ts';
import type { Station } from './station.ts';

/** Standard deviations of daily values about the month's mean, C. */
export interface MonthlySpread {
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
}

interface MonthlyMeans {
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  readonly sdMeanC: readonly number[] | null;
}

/**
 * Constant, spread of daily means s, s times daily range over 10 C, mean temperature over 10 C. Fitted on 201 US places that have both
 * the reports and CLIGEN's standard deviations of daily values (USDA-ARS); ten-fold mean error 0.53 C for minima, 0.42 C for maxima on
 * means of 4.5 and 5.0 C. Standing: ours.
 */
const TMIN_FIT = [1.146, 1.113, -0.166, -0.177] as const;
const TMAX_FIT = [1.714, 0.656, 0.233, -0.239] as const;

/** Null for a station whose reports give no spread. */
export function spreadFromReports({ tminC, tmaxC, sdMeanC }: MonthlyMeans | Station): MonthlySpread | null {
  if (sdMeanC === null) return null;
  const by = ([constant, perSpread, perRange, perMean]: readonly [number, number, number, number]) =>
    sdMeanC.map((sd, month) => {
      const [low, high] = [tminC[month] as number, tmaxC[month] as number];
      const fitted =
        constant + perSpread * sd + (perRange * sd * (high - low)) / 10 + (perMean * (low + high)) / 20;
      return Math.max(SMALLEST_SPREAD_C, fitted);
    });
  return { tminC: by(TMIN_FIT), tmaxC: by(TMAX_FIT) };
}
