/** First and last freezes, the season between them and the winter low, read off the weather years. */
import { monthDay } from '../days.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { DAYS_PER_YEAR } from './calendar.ts';
import type { DateQuantiles, FreezeThresholdF } from './figures.ts';
import { freezeThresholdsF } from './figures.ts';
import type { Spread } from './quantiles.ts';
import { sortedQuantile, spreadOf } from './quantiles.ts';
import type { WeatherYears } from './weatherYears.ts';

export interface FreezeOdds {
  /** First freeze of the winter; a year without one counts as later than any date. */
  readonly first: DateQuantiles;
  /** Last freeze of the winter; a year without one counts as earlier than any date. */
  readonly last: DateQuantiles;
  /** Share of years without such a freeze, 0 to 1. */
  readonly none: number;
}

/** Season days (0 is the first day of the season) of the first and last freeze of each season; -1 where there is none. */
interface FreezeDays {
  readonly first: Int16Array;
  readonly last: Int16Array;
}

/** What one pass over the minima gives. */
export interface Winters {
  readonly firstDoy: number;
  /** By threshold, in the order of `freezeThresholdsF`. */
  readonly freezes: ReadonlyMap<FreezeThresholdF, FreezeDays>;
  /** Lowest Tmin of each season, C. */
  readonly lowestC: Float64Array;
}

/** Goes through every season once. A freeze is a minimum at or below the threshold, as the agencies count. */
export function findWinters(years: WeatherYears): Winters {
  const { tminC, count } = years;
  const freezes = new Map<FreezeThresholdF, FreezeDays>();
  const levels = freezeThresholdsF.map(thresholdF => {
    const days: FreezeDays = { first: new Int16Array(count).fill(-1), last: new Int16Array(count).fill(-1) };
    freezes.set(thresholdF, days);
    return { limitC: fahrenheitToCelsius(thresholdF), ...days };
  });
  const lowestC = new Float64Array(count);
  for (let season = 0; season < count; season += 1) {
    const from = season * DAYS_PER_YEAR;
    // Thresholds fall, so each search goes on where the one before it ended.
    let [start, end] = [0, DAYS_PER_YEAR - 1];
    for (const { limitC, first, last } of levels) {
      while (start < DAYS_PER_YEAR && (tminC[from + start] as number) > limitC) start += 1;
      if (start === DAYS_PER_YEAR) break;
      while ((tminC[from + end] as number) > limitC) end -= 1;
      first[season] = start;
      last[season] = end;
    }
    let lowest = Number.POSITIVE_INFINITY;
    for (let day = from; day < from + DAYS_PER_YEAR; day += 1) {
      const low = tminC[day] as number;
      if (low < lowest) lowest = low;
    }
    lowestC[season] = lowest;
  }
  return { firstDoy: years.firstDoy, freezes, lowestC };
}

/** Odds of first and last freezes at one threshold. */
export function freezeOdds(winters: Winters, thresholdF: FreezeThresholdF): FreezeOdds {
  const { first, last } = winters.freezes.get(thresholdF) as FreezeDays;
  const NEVER = DAYS_PER_YEAR;
  const firstSorted = first.map(day => (day < 0 ? NEVER : day)).sort();
  const lastSorted = last.slice().sort();
  const date = (day: number) => (day < 0 || day === NEVER ? null : monthDay(winters.firstDoy + day));
  const quantiles = (sorted: Int16Array): DateQuantiles => ({
    p10: date(sortedQuantile(sorted, 0.1)),
    p50: date(sortedQuantile(sorted, 0.5)),
    p90: date(sortedQuantile(sorted, 0.9)),
  });
  const none = first.reduce((without, day) => without + (day < 0 ? 1 : 0), 0) / first.length;
  return { first: quantiles(firstSorted), last: quantiles(lastSorted), none };
}

/**
 * Days from the last freeze of one winter to the first of the next, per pair of winters; a whole year where either
 * winter had none.
 */
function seasonLengths(winters: Winters, thresholdF: FreezeThresholdF): number[] {
  const { first, last } = winters.freezes.get(thresholdF) as FreezeDays;
  return Array.from(last.subarray(0, -1), (end, winter) => {
    const next = first[winter + 1] as number;
    return end < 0 || next < 0 ? DAYS_PER_YEAR : Math.min(DAYS_PER_YEAR, DAYS_PER_YEAR - end + next);
  });
}

/** 10, 50 and 90 % season lengths in days: p10 is the short season. */
export function seasonDays(winters: Winters, thresholdF: FreezeThresholdF = 32): Spread {
  return spreadOf(seasonLengths(winters, thresholdF));
}
