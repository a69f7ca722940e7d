/**
 * What the weather at home lets expect: every question is put to the same weather years once and its answer kept, so that
 * five thousand lots that share a season ask no more often than fifty.
 */

import { daysForward } from '../climate/calendar.ts';
import type { ClimateFigures } from '../climate/figures.ts';
import type { DayRule, Forecast, ObservedDay } from '../climate/forecast.ts';
import { forecastDay } from '../climate/forecast.ts';
import { findWinters, freezeOdds } from '../climate/freezes.ts';
import type { Spread } from '../climate/quantiles.ts';
import { type WeatherYears, weatherYears } from '../climate/weatherYears.ts';
import { addDays, type Day, dayParts, daysBetween, doyFromMonthDay } from '../days.ts';
import { chillNeed } from '../phenology/chill.ts';
import { heatCountsFrom } from '../phenology/heatStart.ts';
import type { Species } from '../records/species.ts';
import { midwinterOf } from './seasons.ts';

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
  /** The day in the rest season a day lies in from which heat counts toward budbreak. */
  heatCountsFrom(species: Species, inSeasonOf: Day): Day;
  /** Last 32 F freeze of a winter in days from midsummer, early, middle and late year; null where it hardly freezes. */
  lastFreeze(): Spread | null;
  /** The day on which a rule, started on `start`, comes true. `name` tells rules with different figures apart. */
  when(name: string, start: Day, makeRule: () => DayRule): Forecast;
  /** What was to be expected on an earlier day: the same weather years, with the log only up to that day. */
  until(on: Day): Outlook;
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

/** What all outlooks of a home share, whatever day they are of. */
interface Home {
  name: string;
  figures: ClimateFigures;
  years: WeatherYears;
  /** Days after midwinter from which heat counts, by species. */
  heatFrom(species: Species): number;
  lastFreeze(): Spread | null;
  /** The whole log that is known. */
  log: readonly ObservedDay[];
  /** Forecasts by rule, start and how much of the log they rest on. */
  kept: Map<string, Forecast>;
  /** Forecasts that the log alone decided, by rule and start: the same for every outlook that knows that day. */
  settled: Map<string, { on: Day; forecast: Forecast }>;
  earlier: Map<number, Outlook>;
}

/** The day on which the log decided a forecast: every year agrees and nothing until then was simulated. Null otherwise. */
function settledOn({ range, share }: Forecast, start: Day, log: readonly ObservedDay[]): Day | null {
  if (!range || share < 1 || range.from !== range.to) return null;
  const days = daysBetween(start, range.to) + 1;
  return logIndex(log, addDays(range.to, 1)) - logIndex(log, start) === days ? range.to : null;
}

/** The outlook of a day up to which so many readings of the log were known. */
function outlookOf(home: Home, readings: number): Outlook {
  const { figures, years, kept, settled, earlier } = home;
  const log = readings === home.log.length ? home.log : home.log.slice(0, readings);
  const outlook: Outlook = {
    place: home.name,
    south: figures.lat < 0,
    seasons: LOT_SEASONS,
    log,
    monthMeanC(of) {
      const month = dayParts(of).month - 1;
      return (figures.tminC[month]! + figures.tmaxC[month]!) / 2;
    },
    heatCountsFrom(species, inSeasonOf) {
      return addDays(midwinterOf(inSeasonOf, outlook.south), home.heatFrom(species));
    },
    lastFreeze: home.lastFreeze,
    when(name, start, makeRule) {
      const question = `${start} ${name}`;
      const decided = settled.get(question);
      if (decided && log.length > 0 && decided.on <= log[log.length - 1]!.day) return decided.forecast;
      const since = loggedSince(log, start);
      const key = since.length === 0 ? question : `${question} ${readings}`;
      let forecast = kept.get(key);
      if (!forecast) {
        forecast = forecastDay(years, start, makeRule, undefined, since);
        kept.set(key, forecast);
        const on = settledOn(forecast, start, log);
        if (on) settled.set(question, { on, forecast });
      }
      return forecast;
    },
    until(on) {
      const known = logIndex(log, addDays(on, 1));
      if (known === readings) return outlook;
      let before = earlier.get(known);
      if (!before) {
        before = outlookOf(home, known);
        earlier.set(known, before);
      }
      return before;
    },
  };
  return outlook;
}

/** The last 32 F freeze, found when first asked for; null where fewer than nine winters in ten have one. */
function lastFreezeOf(years: WeatherYears): () => Spread | null {
  let found: Spread | null | undefined;
  return () => {
    if (found !== undefined) return found;
    const { last } = freezeOdds(findWinters(years), 32);
    const day = (date: string | null) => {
      const doy = date === null ? null : doyFromMonthDay(date);
      return doy === null ? null : daysForward(years.firstDoy, doy);
    };
    const [p10, p50, p90] = [day(last.p10), day(last.p50), day(last.p90)];
    found = p10 === null || p50 === null || p90 === null ? null : { p10, p50, p90 };
    return found;
  };
}

/** Days after midwinter from which the heat of each species counts, found when first asked for. */
function heatFromOf(years: WeatherYears): (species: Species) => number {
  const found = new Map<string, number>();
  return species => {
    const known = found.get(species.id);
    if (known !== undefined) return known;
    const [from] = heatCountsFrom(years, [chillNeed(species)], null) as [number];
    found.set(species.id, from);
    return from;
  };
}

/**
 * The outlook from a home place's climate and the yard's own log. Logged days up to `asOf` count as they were; the days
 * after them, and those not logged, are taken from the weather years. Drawing the years costs about 10 ms.
 */
export function homeOutlook(
  { name, figures }: { name: string; figures: ClimateFigures },
  log: readonly ObservedDay[],
  asOf: Day,
): Outlook {
  const known = log.filter(({ day }) => day <= asOf);
  const years = weatherYears(figures, LOT_SEASONS);
  const kept = { kept: new Map(), settled: new Map(), earlier: new Map() };
  const heatFrom = heatFromOf(years);
  const lastFreeze = lastFreezeOf(years);
  return outlookOf({ name, figures, years, heatFrom, lastFreeze, log: known, ...kept }, known.length);
}
