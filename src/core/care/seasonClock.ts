/** Between days of the season (0 on July 24, January 24 south of the equator) and days of the calendar. */

import { DAYS_PER_YEAR, daysForward, wrapDoy } from '../climate/calendar.ts';
import { type Day, dayOfYear, dayParts, monthDay } from '../days.ts';

/** A day of a season; the season is named by the year in which it starts. */
export interface SeasonDay {
  season: number;
  /** 0 to 364. */
  at: number;
}

/** Which season a day lies in. */
export function seasonDayOf(of: Day, firstDoy: number): SeasonDay {
  const doy = dayOfYear(of);
  const { year } = dayParts(of);
  return { season: doy >= firstDoy ? year : year - 1, at: daysForward(firstDoy, doy) };
}

/** The calendar day of a day of a season; days below 0 or past 364 reach into the seasons beside it. */
export function dayOfSeason({ season, at }: SeasonDay, firstDoy: number): Day {
  const whole = Math.round(at);
  const year = season + Math.floor((firstDoy - 1 + whole) / DAYS_PER_YEAR);
  // A day of a 365-day year exists in every year, so it need not be checked: calendars ask for thousands.
  return `${String(year).padStart(4, '0')}-${monthDay(wrapDoy(firstDoy + whole))}` as Day;
}

/** `MM-DD` of a day of any season. */
export function monthDayOfSeason(at: number, firstDoy: number): string {
  return monthDay(wrapDoy(firstDoy + Math.round(at)));
}
