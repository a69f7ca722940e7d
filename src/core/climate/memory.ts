/**
 * How warm and cold spells hang on: the correlation of a day's anomaly with the days before it.
 *
 * Long daily records show two time scales: a quick one (weather systems) and a slow one (a mild or hard month). Their
 * autocorrelation at lag k is close to (1 - SLOW_SHARE) * quick^k + SLOW_SHARE * SLOW_LAG^k; a single first-order memory
 * that matches the first days has no mild or hard months left.
 */

/** Share of the variance that belongs to the slow scale. Standing: ours, from six records of 22 to 100 years. */
const SLOW_SHARE = 0.1;
/**
 * What the slow scale keeps from one day to the next: half of it is left after ten weeks. Gives degree-day totals the
 * year-to-year spread of long records. Standing: ours, from the same records.
 */
const SLOW_LAG = 0.99;
/** Correlation with the day before where the place gives none; gave the smallest freeze date errors. Standing: ours. */
const DEFAULT_LAG1 = 0.57;
/**
 * Taken from a measured correlation: it comes mostly from mild days, and cold nights, which decide freezes and winter
 * lows, hang on less. The records average 0.67 where 0.57 does best. Standing: ours.
 */
const LAG1_ALLOWANCE = 0.1;
const LARGEST_QUICK_LAG = 0.95;

/**
 * Step of the process that has this memory and unit variance: with chance e from a standard normal,
 * quick = quickLag * quick + e, slow = slowLag * slow + e, anomaly = quickWeight * quick + slowWeight * slow.
 */
export interface Memory {
  readonly quickLag: number;
  readonly slowLag: number;
  readonly quickWeight: number;
  readonly slowWeight: number;
}

/** The memory of daily anomalies, from the place's own measured lag-1 correlation of Tmin or, for null, the usual one. */
export function memoryOf(lag1: number | null): Memory {
  const lag = lag1 === null ? DEFAULT_LAG1 : lag1 - LAG1_ALLOWANCE;
  const wanted = (lag - SLOW_SHARE * SLOW_LAG) / (1 - SLOW_SHARE);
  const quickLag = Math.min(LARGEST_QUICK_LAG, Math.max(0, wanted));
  // Both parts are fed by the same chance, so they covary; the weights are those whose covariances add up as wanted.
  const quickSum = 1 / (1 - quickLag * quickLag);
  const slowSum = 1 / (1 - SLOW_LAG * SLOW_LAG);
  const crossSum = 1 / (1 - quickLag * SLOW_LAG);
  const odds = SLOW_SHARE / (1 - SLOW_SHARE);
  const linear = crossSum * (1 - odds);
  const ratio = (-linear + Math.sqrt(linear * linear + 4 * slowSum * odds * quickSum)) / (2 * slowSum);
  const quickWeight = Math.sqrt((1 - SLOW_SHARE) / (quickSum + ratio * crossSum));
  return { quickLag, slowLag: SLOW_LAG, quickWeight, slowWeight: ratio * quickWeight };
}
