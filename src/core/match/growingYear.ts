/**
 * The growing year, midwinter to midwinter, and what bounds the season of one species in it. All indexes are days since
 * midwinter, 0 to 365.
 */
import { DAYS_PER_YEAR, daysForward, seasonStartDoy, wrapDoy } from '../climate/calendar.ts';
import { sumTabledDegreeDays } from '../climate/heat.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';

/** Heat is counted from 1 January, 1 July south of the equator. Standing: common practice. */
const MIDWINTER_DOY_NORTH = 1;
const MIDWINTER_DOY_SOUTH = 182;

export interface GrowingCalendar {
  /** Day of the year of index 0. */
  readonly firstDoy: number;
  /** Index of the day that splits spring freezes from fall freezes: 24 July, 24 January south. */
  readonly midsummer: number;
}

export function growingCalendar(lat: number): GrowingCalendar {
  const firstDoy = lat < 0 ? MIDWINTER_DOY_SOUTH : MIDWINTER_DOY_NORTH;
  return { firstDoy, midsummer: daysForward(firstDoy, seasonStartDoy(lat)) };
}

/** Day of the year of an index. */
export function doyOfIndex(calendar: GrowingCalendar, index: number): number {
  return wrapDoy(calendar.firstDoy + index);
}

/** Where each of the first whole growing years starts in the series; the half year before them is left out. */
export function growingYearStarts(years: WeatherYears, most: number): Int32Array {
  const into = daysForward(years.firstDoy, growingCalendar(years.lat).firstDoy);
  const length = Math.min(most, years.count - 1);
  return Int32Array.from({ length }, (_, year) => year * DAYS_PER_YEAR + into);
}

/** Heat summed from midwinter, C-degree-days: `into[i]` is what the days before index i gave. `into` has 366 places. */
export function sumHeat(
  into: Float64Array,
  years: WeatherYears,
  from: number,
  baseC: number,
  capC: number,
): void {
  sumTabledDegreeDays(into, years, from, DAYS_PER_YEAR, baseC, capC);
}

/** What starts and ends a species' season. */
export interface SeasonRules {
  /** Index from which heat counts towards budbreak: midwinter, or later where chill is met later. */
  readonly wakeIndex: number;
  /** C-degree-days from there to budbreak. */
  readonly budbreakHeat: number;
  /** A spring night at or below this after budbreak costs the shoots, and the count starts again after it; null: never. */
  readonly leafDamageC: number | null;
  /** The first night at or below this after midsummer ends the season; null: it never ends. */
  readonly killingC: number | null;
}

export interface SeasonBounds {
  budbreak: number;
  /** First day that counts towards ripening. */
  start: number;
  /** Day of the killing freeze; the length of the year when there is none. */
  end: number;
}

/** Index of the first heat sum that is `heat` above the one at `from`; 365 when the year does not get there. */
export function whenHeatMet(heatSum: Float64Array, from: number, heat: number): number {
  const target = (heatSum[from] as number) + heat;
  if ((heatSum[DAYS_PER_YEAR] as number) < target) return DAYS_PER_YEAR;
  let [low, high] = [from, DAYS_PER_YEAR];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((heatSum[middle] as number) >= target) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Writes the bounds of one growing year into `bounds`. `from` is where the year starts in the series. */
export function findBounds(
  bounds: SeasonBounds,
  tminC: Float32Array,
  from: number,
  heatSum: Float64Array,
  rules: SeasonRules,
  midsummer: number,
): void {
  const budbreak = whenHeatMet(heatSum, rules.wakeIndex, rules.budbreakHeat);
  let start = budbreak;
  if (rules.leafDamageC !== null) {
    let day = midsummer - 1;
    while (day >= budbreak && (tminC[from + day] as number) > rules.leafDamageC) day -= 1;
    start = Math.max(budbreak, day + 1);
  }
  let end = DAYS_PER_YEAR;
  if (rules.killingC !== null) {
    end = Math.max(midsummer, start);
    while (end < DAYS_PER_YEAR && (tminC[from + end] as number) > rules.killingC) end += 1;
  }
  bounds.budbreak = budbreak;
  bounds.start = start;
  bounds.end = end;
}
