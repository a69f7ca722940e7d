/** The turning points of the year that the forecasts start from, for both halves of the world. */

import { seasonStartDoy } from '../climate/calendar.ts';
import { type Day, day, dayParts, monthDay } from '../days.ts';

const onThe = (year: number, doy: number): Day => day(`${String(year).padStart(4, '0')}-${monthDay(doy)}`);

const midsummerDoy = (south: boolean) => seasonStartDoy(south ? -1 : 1);

/** From midsummer on a cold night may take the leaves: the newest midsummer (July 24, January 24 south) on or before a day. */
export function midsummerBefore(of: Day, south: boolean): Day {
  const { year } = dayParts(of);
  const thisYear = onThe(year, midsummerDoy(south));
  return thisYear <= of ? thisYear : onThe(year - 1, midsummerDoy(south));
}

/** The midsummer after a day. */
export function midsummerAfter(of: Day, south: boolean): Day {
  return onThe(dayParts(midsummerBefore(of, south)).year + 1, midsummerDoy(south));
}

/**
 * Midwinter of the season a day lies in: January 1 north, July 1 south.
 */
export function midwinterOf(of: Day, south: boolean): Day {
  const { year } = dayParts(midsummerBefore(of, south));
  return south ? onThe(year, 182) : onThe(year + 1, 1);
}

/** Day from which leaf fall is looked for, given leaves seen on a day: that day in the falling half of the year, else the midsummer to come. */
export function leafFallFrom(of: Day, south: boolean): Day {
  return of < midwinterOf(of, south) ? of : midsummerAfter(of, south);
}
