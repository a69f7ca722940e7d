/** Counts of days of the growing year over weather years: quantiles without sorting. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { DoySpread } from './answers.ts';

/** Below this share of years a date would mislead more than it tells. */
export const SMALLEST_SHARE_FOR_A_DATE = 0.1;

/** Counts of days by index. The last place holds years in which the thing does not happen. */
export interface Tally {
  readonly byDay: Uint32Array;
  /** Years in which the need at its word is met. */
  sharp: number;
}

export const newTally = (): Tally => ({ byDay: new Uint32Array(DAYS_PER_YEAR + 1), sharp: 0 });

/** The 10, 50 and 90 % days among those counted; null when the thing happens in fewer than one year in ten. */
export function spread(byDay: Uint32Array, toDoy: (index: number) => number): DoySpread | null {
  const counted = byDay.reduce((sum, count) => sum + count, 0);
  const happened = counted - (byDay[DAYS_PER_YEAR] as number);
  if (happened === 0 || happened < counted * SMALLEST_SHARE_FOR_A_DATE) return null;
  const at = (share: number) => {
    const rank = Math.max(1, Math.ceil(share * happened - 1e-9));
    let day = 0;
    for (let seen = byDay[0] as number; seen < rank; seen += byDay[day] as number) day += 1;
    return toDoy(day);
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

export function count(tally: Tally, index: number): void {
  tally.byDay[index] = (tally.byDay[index] as number) + 1;
}
