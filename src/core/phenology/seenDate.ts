/** What a dated observation says of a crop: the figure it asks for, and how far it lies from the class. By the mean year of the place. */
import { DAYS_PER_YEAR, daysForward } from '../climate/calendar.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { doyFromMonthDay } from '../days.ts';
import type { Species } from '../records/species.ts';
import {
  BLOOM_SHARE,
  bloomOn,
  daysFromBloom,
  leastDaysMetOn,
  leastHeatMetOn,
  type RipeningNeed,
} from './fruit.ts';
import {
  type GrowingCalendar,
  growingCalendar,
  growingYearStarts,
  reachedOn,
  sumHeat,
} from './growingYear.ts';

/** A range of days of the year, `MM-DD`; it may run over the new year. */
export interface SeenRange {
  readonly from: string;
  readonly to: string;
}

/** Heat sums of the mean year of a place, counted from March 1 (September 1 south). */
export interface MeanYear {
  readonly calendar: GrowingCalendar;
  /** C-degree-days, 366 places. */
  readonly heatSum: Float64Array;
}

const kept = new WeakMap<WeatherYears, Map<string, MeanYear>>();

/** The mean year of weather years for a species' base and cap, summed once. */
export function meanYear(
  years: WeatherYears,
  { heatBaseC, heatCapC }: Pick<Species, 'heatBaseC' | 'heatCapC'>,
): MeanYear {
  const byHeat = kept.get(years) ?? new Map<string, MeanYear>();
  kept.set(years, byHeat);
  const key = `${heatBaseC.value} ${heatCapC.value}`;
  const known = byHeat.get(key);
  if (known) return known;
  const calendar = growingCalendar(years.lat);
  const starts = growingYearStarts(years, years.count);
  const one = new Float64Array(DAYS_PER_YEAR + 1);
  const heatSum = new Float64Array(DAYS_PER_YEAR + 1);
  for (const from of starts) {
    sumHeat(one, years, from, calendar.heatFrom, heatBaseC.value, heatCapC.value);
    one.forEach((sum, i) => {
      heatSum[i] = (heatSum[i] as number) + sum / starts.length;
    });
  }
  const made = { calendar, heatSum };
  byHeat.set(key, made);
  return made;
}

/** First day of a range as a day of the year, and days from there to its middle. Throws a RangeError for what is no day of the year. */
export function middleOf({ from, to }: SeenRange): { doy: number; half: number } {
  const [a, b] = [doyFromMonthDay(from), doyFromMonthDay(to)];
  if (a === null || b === null) throw new RangeError(`no days of the year: ${from} to ${to}`);
  return { doy: a, half: daysForward(a, b) / 2 };
}

/** Index of the middle of a range in the growing year, with a half where it falls between two days. */
export function middleIndex(range: SeenRange, { firstDoy }: GrowingCalendar): number {
  const { doy, half } = middleOf(range);
  return daysForward(firstDoy, doy) + half;
}

/** C-degree-days of the mean year by the end of the middle day of a range. */
export function heatSeen({ calendar, heatSum }: MeanYear, range: SeenRange): number {
  const index = middleIndex(range, calendar) + 1;
  const whole = Math.min(Math.floor(index), DAYS_PER_YEAR);
  const [low, high] = [heatSum[whole] as number, heatSum[Math.min(DAYS_PER_YEAR, whole + 1)] as number];
  return low + (index - whole) * (high - low);
}

/** Days from bloom, for a bloom on May 25, that a range asks for when full bloom takes so much heat. */
export function daysSeen({ calendar, heatSum }: MeanYear, range: SeenRange, bloomHeat: number): number {
  const bloom = bloomOn({ heatSum, from: calendar.heatFrom, baseline: 0 }, bloomHeat);
  return middleIndex(range, calendar) - calendar.usualBloom - BLOOM_SHARE * (bloom - calendar.usualBloom);
}

/** Ripe fruit seen farther from its class than this contradicts it, days: the date, the place or the class is wrong. Standing: ours; about two months. */
export const LARGEST_DAYS_OFF_CLASS = 60;

/** Days by which a range lies after the day that a need gives in the mean year; negative when before it. A need never met counts as 365. */
export function daysAfterClass(
  { calendar, heatSum }: MeanYear,
  range: SeenRange,
  need: RipeningNeed,
): number {
  const seen = middleIndex(range, calendar);
  const grown = { heatSum, from: calendar.heatFrom, baseline: 0 };
  if (need.by === 'heat') {
    const warmOn = reachedOn(heatSum, calendar.heatFrom, need.heat);
    return seen - Math.min(DAYS_PER_YEAR, Math.max(warmOn, leastDaysMetOn(grown, need)));
  }
  const bloom = bloomOn(grown, need.bloomHeat);
  const warmEnough = leastHeatMetOn(heatSum, bloom, need.leastHeat);
  return seen - Math.min(DAYS_PER_YEAR, Math.max(warmEnough, daysFromBloom(bloom, need.days, calendar)));
}
