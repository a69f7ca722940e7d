/** How far what is modeled from the figures of a point may be off. */

import { doyFromMonthDay } from '../../days.ts';
import { wrapDoy } from '../calendar.ts';
import { dailyCurve } from '../dailyCurve.ts';

/**
 * Error of the model itself, beside that of the monthly means: set so that the stated errors are on average those found at US stations left
 * out of the network. Standing: ours.
 */
const MODEL_DAYS = 3.5;
const MODEL_COLDEST_C = 1;
/** Where nights hardly change with the date, a date may be off by weeks. */
const LEAST_SLOPE_C_A_DAY = 0.06;
const MOST_DAYS = 45;

/** Mean absolute error of a middle freeze date, days, where the monthly minima are off by `errorC`; null where there is no date. */
export function dateErrorDays(date: string | null, tminC: readonly number[], errorC: number): number | null {
  const doy = date === null ? null : doyFromMonthDay(date);
  if (doy === null) return null;
  const curve = dailyCurve(tminC);
  const at = (day: number) => curve[wrapDoy(day) - 1] as number;
  const slope = Math.max(LEAST_SLOPE_C_A_DAY, Math.abs(at(doy + 10) - at(doy - 10)) / 20);
  return Math.min(MOST_DAYS, Math.hypot(errorC / slope, MODEL_DAYS));
}

/** Mean absolute error of the mean coldest night, C. */
export function coldestNightErrorC(errorC: number): number {
  return Math.hypot(errorC, MODEL_COLDEST_C);
}

/** Two times of three the truth lies nearer than this many mean absolute errors (normal distribution: 0.967 sd over 0.798 sd). */
export const TWO_IN_THREE = 1.2;
