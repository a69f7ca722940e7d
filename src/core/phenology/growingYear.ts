/**
 * The growing year, midwinter to midwinter, in which a tree's spring, summer and fall are counted. All indexes are days since
 * midwinter, 0 to 364; 365 stands for "not this year".
 */
import { DAYS_PER_YEAR, daysForward, seasonStartDoy, wrapDoy } from '../climate/calendar.ts';
import { sumTabledDegreeDays } from '../climate/heat.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';

/** January 1, July 1 south of the equator. */
const MIDWINTER_DOY_NORTH = 1;
const MIDWINTER_DOY_SOUTH = 182;
/**
 * Heat counts from March 1, September 1 south: days of bloom and ripening come out nearer than from January 1, because warm spells
 * before March hardly move a resting tree. Standing: ours, fitted.
 */
const HEAT_FROM_DOY_NORTH = 60;
const HEAT_FROM_DOY_SOUTH = 244;
/** The bloom that days to ripeness are told for: May 25, November 23 south. */
const USUAL_BLOOM_DOY_NORTH = 145;
const USUAL_BLOOM_DOY_SOUTH = 327;

/** Daily extremes, C; a year starts at `from`. */
export interface YearOfDays {
  readonly tminC: Float32Array;
  readonly tmaxC: Float32Array;
  readonly from: number;
}

export interface GrowingCalendar {
  /** Day of the year of index 0. */
  readonly firstDoy: number;
  /** Index of the first day whose heat counts. */
  readonly heatFrom: number;
  /** Index of the bloom that days to ripeness are told for. */
  readonly usualBloom: number;
  /** Index of the day that splits spring freezes from fall freezes: July 24, January 24 south. */
  readonly midsummer: number;
}

export function growingCalendar(lat: number): GrowingCalendar {
  const south = lat < 0;
  const firstDoy = south ? MIDWINTER_DOY_SOUTH : MIDWINTER_DOY_NORTH;
  const indexOf = (doy: number) => daysForward(firstDoy, doy);
  return {
    firstDoy,
    heatFrom: indexOf(south ? HEAT_FROM_DOY_SOUTH : HEAT_FROM_DOY_NORTH),
    usualBloom: indexOf(south ? USUAL_BLOOM_DOY_SOUTH : USUAL_BLOOM_DOY_NORTH),
    midsummer: indexOf(seasonStartDoy(lat)),
  };
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

/**
 * Heat summed over a growing year, C-degree-days: `into[i]` is what the days from `heatFrom` to before index i gave.
 * `into` has 366 places; `from` is where the year starts in the series.
 */
export function sumHeat(
  into: Float64Array,
  years: WeatherYears,
  from: number,
  heatFrom: number,
  baseC: number,
  capC: number,
): void {
  into.fill(0, 0, heatFrom);
  sumTabledDegreeDays(into.subarray(heatFrom), years, from + heatFrom, DAYS_PER_YEAR - heatFrom, baseC, capC);
}

/** Index of the first day from `from` on whose own heat brings the sum to `target`; 365 when the year does not get there. */
export function reachedOn(heatSum: Float64Array, from: number, target: number): number {
  if ((heatSum[DAYS_PER_YEAR] as number) < target) return DAYS_PER_YEAR;
  let [low, high] = [from, DAYS_PER_YEAR - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((heatSum[middle + 1] as number) >= target) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Index of the day that completes so much heat counted from `from`; 365 when the year does not give it. */
export function heatMetOn(heatSum: Float64Array, from: number, heat: number): number {
  return reachedOn(heatSum, from, (heatSum[from] as number) + heat);
}
