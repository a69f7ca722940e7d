/** How often and how much to water a pot, from its size and the drying power of the air. Standing of every figure: ours. */

import { roundTo } from '../units.ts';

/** Days between waterings of a mid-size pot in leaf at a vapour pressure deficit of 1 kPa. */
const DAYS_AT_ONE_KPA = 3;
/** Damper air than this does not stretch the time further, kPa. */
const LEAST_DEFICIT_KPA = 0.3;
/** The pot the days are meant for: a #3 of the trade, litres. */
const USUAL_POT_LITRES = 11;
const FEWEST_DAYS = 1;
const MOST_DAYS = 10;
/** Water at a time as a share of the volume of the pot. */
export const waterShare = { low: 0.1, high: 0.15 } as const;

/**
 * Days between waterings of a tree in leaf, 1 to 10, not rounded. A pot holds water by its volume and dries through its surface, so
 * the days grow with the cube root of the litres.
 */
export function wateringDays(deficitKpa: number, litres: number): number {
  const days = DAYS_AT_ONE_KPA / Math.max(deficitKpa, LEAST_DEFICIT_KPA);
  const bySize = (litres / USUAL_POT_LITRES) ** (1 / 3);
  return Math.min(MOST_DAYS, Math.max(FEWEST_DAYS, days * bySize));
}

/** Litres to give at a time, in steps of a tenth. */
export function waterLitres(litres: number, share: { low: number; high: number } = waterShare) {
  return { low: roundTo(litres * share.low, 0.1), high: roundTo(litres * share.high, 0.1) };
}
