/** When something that depends on the weather will have happened: run over every weather year, told as a range. */
import type { Day, DayRange } from '../days.ts';
import { addDays, dayFromParts, dayOfYear, dayParts, daysBetween, isLeapYear } from '../days.ts';
import { DAYS_PER_YEAR, daysForward } from './calendar.ts';
import type { WeatherYears } from './weatherYears.ts';

/** Called once per simulated (or real) day in order; returns true on the day the thing has happened. */
export type DayRule = (tminC: number, tmaxC: number, daysSinceStart: number) => boolean;

export interface Forecast {
  /** 10 % and 90 % day among years in which it happens; null when it happens in under 10 % of years. */
  range: DayRange | null;
  /** 50 % day among years in which it happens; null together with `range`. */
  median: Day | null;
  /** Share of years, 0 to 1, in which it happens within the horizon. */
  share: number;
}

/** One day of a yard's own temperature log. */
export interface ObservedDay {
  day: Day;
  tminC: number;
  tmaxC: number;
}

export const DEFAULT_HORIZON_DAYS = 400;
/** Below this share of years a date would mislead more than it tells. */
const SMALLEST_SHARE_FOR_A_DATE = 0.1;

/** Where each day after the start lies in the series, from the start: February 29 repeats February 28. */
function seriesOffsets(start: Day, horizonDays: number): Int32Array {
  const { year } = dayParts(start);
  const lastYear = year + Math.ceil(horizonDays / DAYS_PER_YEAR) + 1;
  const leapDays: number[] = [];
  for (let at = year; at <= lastYear; at += 1) {
    if (isLeapYear(at)) leapDays.push(daysBetween(start, dayFromParts(at, 2, 29)));
  }
  const offsets = new Int32Array(horizonDays);
  let offset = 0;
  for (let i = 1; i < horizonDays; i += 1) {
    if (!leapDays.includes(i)) offset += 1;
    offsets[i] = offset;
  }
  return offsets;
}

/** Days after the start on which the rule comes true within the unbroken run of observed days there; null when it does not. */
function withinObserved(makeRule: () => DayRule, seen: readonly (ObservedDay | undefined)[]): number | null {
  const rule = makeRule();
  for (const [since, known] of seen.entries()) {
    if (!known) return null;
    if (rule(known.tminC, known.tmaxC, since)) return since;
  }
  return null;
}

/**
 * The day on which a rule first returns true, over all weather years that hold the whole horizon.
 * Days of `observed` (in any order, gaps allowed, days before `start` ignored) replace simulated ones, so that a yard's
 * own log decides up to today and the model only afterwards. The rule is made anew for each year.
 */
export function forecastDay(
  years: WeatherYears,
  start: Day,
  makeRule: () => DayRule,
  horizonDays: number = DEFAULT_HORIZON_DAYS,
  observed: readonly ObservedDay[] = [],
): Forecast {
  const offsets = seriesOffsets(start, horizonDays);
  const seen = new Array<ObservedDay | undefined>(horizonDays).fill(undefined);
  for (const entry of observed) {
    const since = daysBetween(start, entry.day);
    if (since >= 0 && since < horizonDays) seen[since] = entry;
  }
  const settled = withinObserved(makeRule, seen);
  if (settled !== null) {
    const on = addDays(start, settled);
    return { range: { from: on, to: on }, median: on, share: 1 };
  }
  const into = daysForward(years.firstDoy, dayOfYear(start));
  const reach = into + (offsets.at(-1) ?? 0);
  const happened: number[] = [];
  let runs = 0;
  for (let season = 0; season * DAYS_PER_YEAR + reach < years.tminC.length; season += 1) {
    runs += 1;
    const rule = makeRule();
    const base = season * DAYS_PER_YEAR + into;
    for (let i = 0; i < horizonDays; i += 1) {
      const known = seen[i];
      const at = base + (offsets[i] as number);
      const tminC = known ? known.tminC : (years.tminC[at] as number);
      const tmaxC = known ? known.tmaxC : (years.tmaxC[at] as number);
      if (rule(tminC, tmaxC, i)) {
        happened.push(i);
        break;
      }
    }
  }
  const share = runs === 0 ? 0 : happened.length / runs;
  if (share < SMALLEST_SHARE_FOR_A_DATE) return { range: null, median: null, share };
  happened.sort((a, b) => a - b);
  const dayAt = (p: number) => addDays(start, happened[Math.ceil(p * happened.length) - 1] as number);
  return { range: { from: dayAt(0.1), to: dayAt(0.9) }, median: dayAt(0.5), share };
}

function shareOfSeasons(
  years: WeatherYears,
  series: Float32Array,
  met: (tC: number) => boolean,
): Float64Array {
  const shares = new Float64Array(DAYS_PER_YEAR);
  for (let i = 0; i < series.length; i += 1) {
    const doyIndex = (years.firstDoy - 1 + i) % DAYS_PER_YEAR;
    if (met(series[i] as number)) shares[doyIndex] = (shares[doyIndex] as number) + 1;
  }
  return shares.map(hits => hits / years.count);
}

/** Chance of a night at or below a limit, by `doy - 1`. */
export function chanceOfNightAtOrBelow(years: WeatherYears, limitC: number): Float64Array {
  return shareOfSeasons(years, years.tminC, tC => tC <= limitC);
}
