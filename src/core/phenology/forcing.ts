/**
 * How warmth wakes a tree that has had its winter: growing degree hours added up to bud swell and to the first leaves. Richardson and others
 * 1974 counted from 4.5 C to 25 C. The need is the only published range we know of: 4,096 to 7,928 growing degree hours over 20 pomegranates
 * (HortScience 52(4):560, 2017); it stands in for the other species, which is our own doing.
 */

const FORCING_BASE_C = 4.5;
const FORCING_CAP_C = 25;

/** Growing degree hours to the first leaves, of the quickest and the slowest cultivar. */
export const FORCING_NEED = { low: 4096, high: 7928 } as const;

/** Buds swell at this share of the need. Standing: ours. */
export const SWELL_SHARE = 0.6;

const HOURS_PER_DAY = 24;

/** Growing degree hours of a day at a steady temperature, C. */
export function forcingHours(meanC: number): number {
  return HOURS_PER_DAY * Math.max(0, Math.min(meanC, FORCING_CAP_C) - FORCING_BASE_C);
}

/** Whole days at a steady temperature until a need is met; infinite where it is too cold. */
export function daysToForce(meanC: number, need: number): number {
  const aDay = forcingHours(meanC);
  return aDay === 0 ? Number.POSITIVE_INFINITY : Math.ceil(need / aDay);
}

/** Days from a start until a need is met, with the mean of each day told by how long it is since; null where it is not met within a year. */
export function daysUntilForced(meanOf: (since: number) => number, need: number): number | null {
  let sum = 0;
  for (let since = 0; since < 365; since += 1) {
    sum += forcingHours(meanOf(since));
    if (sum >= need) return since + 1;
  }
  return null;
}
