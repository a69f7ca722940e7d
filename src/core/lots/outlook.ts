/**
 * What the weather at home lets expect: every question is put to the same weather years once and its answer kept, so that
 * five thousand lots that share a season ask no more often than fifty.
 */

import type { ClimateFigures } from '../climate/figures.ts';
import type { DayRule, Forecast, ObservedDay } from '../climate/forecast.ts';
import { forecastDay } from '../climate/forecast.ts';
import { type WeatherYears, weatherYears } from '../climate/weatherYears.ts';
import { type Day, dayParts } from '../days.ts';

/** Seasons a lot's forecasts are taken from: the 10 % and 90 % days are then good to about two days. Standing: ours. */
export const LOT_SEASONS = 250;

export interface Outlook {
  /** Name of the home place, for the reasons. */
  place: string;
  /** South of the equator: the seasons are half a year apart from the north's. */
  south: boolean;
  /** How many weather years a forecast is taken from. */
  seasons: number;
  /** The yard's own temperature log up to today, in order of day. */
  log: readonly ObservedDay[];
  /** Mean temperature of the month a day lies in, C. */
  monthMeanC(of: Day): number;
  /** The day on which a rule, started on `start`, comes true. `name` tells rules with different figures apart. */
  when(name: string, start: Day, makeRule: () => DayRule): Forecast;
}

/** Index of the first day of the log on or after a day. */
function logIndex(log: readonly ObservedDay[], from: Day): number {
  let low = 0;
  let high = log.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (log[middle]!.day < from) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Days of the yard's log from one day on. */
export function loggedSince(log: readonly ObservedDay[], from: Day): readonly ObservedDay[] {
  return log.slice(logIndex(log, from));
}

/**
 * The outlook from a home place's climate and the yard's own log. Logged days up to `asOf` count as they were; the days
 * after them, and those not logged, are taken from the weather years. Drawing the years costs about 10 ms.
 */
export function homeOutlook(
  home: { name: string; figures: ClimateFigures },
  log: readonly ObservedDay[],
  asOf: Day,
): Outlook {
  const years: WeatherYears = weatherYears(home.figures, LOT_SEASONS);
  const known = log.filter(({ day }) => day <= asOf);
  const kept = new Map<string, Forecast>();
  return {
    place: home.name,
    south: home.figures.lat < 0,
    seasons: LOT_SEASONS,
    log: known,
    monthMeanC(of) {
      const month = dayParts(of).month - 1;
      return (home.figures.tminC[month]! + home.figures.tmaxC[month]!) / 2;
    },
    when(name, start, makeRule) {
      const key = `${start} ${name}`;
      let forecast = kept.get(key);
      if (!forecast) {
        forecast = forecastDay(years, start, makeRule, undefined, loggedSince(known, start));
        kept.set(key, forecast);
      }
      return forecast;
    },
  };
}
