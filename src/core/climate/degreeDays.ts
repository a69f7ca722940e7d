/**
 * Degree days of one day from its minimum and maximum. All temperatures in one unit (C or F); the result is in that
 * unit's degree days. `cap` null means no upper limit.
 * Sources: Baskerville and Emin 1969, Ecology 50:514-517 (single sine); Zalom, Goodell, Wilson, Barnett, Bentley 1983,
 * "Degree-days: the calculation and use of heat units in pest management", UC leaflet 21373 (triangle, cutoffs);
 * McMaster and Wilhelm 1997, Agric. For. Meteorol. 87:291-300 (the two simple averages).
 */

/** Horizontal: the rate stays at its value at the cap. Vertical: nothing counts while it is warmer than the cap. */
export type Cutoff = 'horizontal' | 'vertical';

function assertOrdered(tmin: number, tmax: number): void {
  if (tmin > tmax) throw new RangeError(`minimum ${tmin} above maximum ${tmax}`);
}

/** Daily mean of the degrees above a threshold when the day is a sine wave. */
function sineAbove(tmin: number, tmax: number, threshold: number): number {
  const mean = (tmin + tmax) / 2;
  if (tmin >= threshold) return mean - threshold;
  if (tmax <= threshold) return 0;
  const amplitude = (tmax - tmin) / 2;
  const angle = Math.asin((threshold - mean) / amplitude);
  return ((mean - threshold) * (Math.PI / 2 - angle) + amplitude * Math.cos(angle)) / Math.PI;
}

/** Share of the day above a threshold when the day is a sine wave. */
function sineShareAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmin >= threshold) return 1;
  if (tmax <= threshold) return 0;
  return 0.5 - Math.asin((threshold - (tmin + tmax) / 2) / ((tmax - tmin) / 2)) / Math.PI;
}

function triangleAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmin >= threshold) return (tmin + tmax) / 2 - threshold;
  if (tmax <= threshold) return 0;
  return (tmax - threshold) ** 2 / (2 * (tmax - tmin));
}

function triangleShareAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmin >= threshold) return 1;
  return tmax <= threshold ? 0 : (tmax - threshold) / (tmax - tmin);
}

function capped(
  above: (threshold: number) => number,
  shareAbove: (threshold: number) => number,
  base: number,
  cap: number | null,
  cutoff: Cutoff,
): number {
  if (cap === null) return above(base);
  const horizontal = above(base) - above(cap);
  return cutoff === 'horizontal' ? horizontal : horizontal - (cap - base) * shareAbove(cap);
}

/** Single sine: the method of this site unless a requirement was fitted with another one. */
export function sineDegreeDays(
  tmin: number,
  tmax: number,
  base: number,
  cap: number | null,
  cutoff: Cutoff = 'horizontal',
): number {
  assertOrdered(tmin, tmax);
  return capped(
    threshold => sineAbove(tmin, tmax, threshold),
    threshold => sineShareAbove(tmin, tmax, threshold),
    base,
    cap,
    cutoff,
  );
}

/** Single triangle: straight lines from minimum to maximum and back. */
export function triangleDegreeDays(
  tmin: number,
  tmax: number,
  base: number,
  cap: number | null,
  cutoff: Cutoff = 'horizontal',
): number {
  assertOrdered(tmin, tmax);
  return capped(
    threshold => triangleAbove(tmin, tmax, threshold),
    threshold => triangleShareAbove(tmin, tmax, threshold),
    base,
    cap,
    cutoff,
  );
}

/**
 * Simple average. Which values are held to base and cap makes two methods of one name: the `mean` of the day (method 1
 * of McMaster and Wilhelm), or its two `extremes` before averaging (method 2, as in corn heat units).
 */
export function averageDegreeDays(
  tmin: number,
  tmax: number,
  base: number,
  cap: number | null,
  held: 'mean' | 'extremes',
): number {
  assertOrdered(tmin, tmax);
  const hold = (t: number) => Math.max(base, Math.min(cap ?? t, t));
  return held === 'mean' ? hold((tmin + tmax) / 2) - base : (hold(tmin) + hold(tmax)) / 2 - base;
}
