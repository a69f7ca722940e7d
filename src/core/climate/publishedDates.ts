/** Published freeze dates of which only the middle one is known, filled up from the model. */

import { doyFromMonthDay, monthDay } from '../days.ts';
import { DAYS_PER_YEAR, daysForward } from './calendar.ts';
import type { DateQuantiles, PublishedDates } from './figures.ts';

/** Days from the start of the season; null for a date that does not happen or was not given. */
function seasonDay(date: string | null | undefined, firstDoy: number): number | null {
  const doy = date ? doyFromMonthDay(date) : null;
  return doy === null ? null : daysForward(firstDoy, doy);
}

/** Days the published middle date comes after the modeled one; 0 where either year-half has no middle date. */
export function daysMoved(published: PublishedDates, modeled: DateQuantiles, firstDoy: number): number {
  const theirs = seasonDay(published.p50, firstDoy);
  const ours = seasonDay(modeled.p50, firstDoy);
  return theirs === null || ours === null ? 0 : theirs - ours;
}

/** Whether a date of one year in ten is missing from what was published. */
export function onlyMiddle({ p10, p90 }: PublishedDates): boolean {
  return p10 === undefined || p90 === undefined;
}

/**
 * The published dates; one that was left out is the modeled one, moved by as many days as the published middle date differs from the
 * modeled middle date.
 */
export function completeDates(
  published: PublishedDates,
  modeled: DateQuantiles,
  firstDoy: number,
): DateQuantiles {
  const moved = daysMoved(published, modeled, firstDoy);
  const shifted = (date: string | null) => {
    const day = seasonDay(date, firstDoy);
    if (day === null) return null;
    return monthDay(firstDoy + Math.min(DAYS_PER_YEAR - 1, Math.max(0, day + moved)));
  };
  return {
    p10: published.p10 === undefined ? shifted(modeled.p10) : published.p10,
    p50: published.p50,
    p90: published.p90 === undefined ? shifted(modeled.p90) : published.p90,
  };
}
