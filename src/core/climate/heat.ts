/** Heat of whole years: degree days and hot days over the weather years. */
import { DAYS_PER_YEAR } from './calendar.ts';
import type { MeanAndSd } from './quantiles.ts';
import { meanAndSd } from './quantiles.ts';
import type { WeatherYears } from './weatherYears.ts';

/**
 * Mean of max(0, sin - u) over a full turn for u from -1 to 1, in even steps: the single sine method with the day's mean
 * and amplitude divided out. Straight lines between 2,048 steps are good to 0.0001 degree days a day.
 */
const STEPS = 2048;
const sineTable = Float64Array.from({ length: STEPS + 2 }, (_, i) => {
  const u = Math.min(1, -1 + (2 * i) / STEPS);
  return (Math.sqrt(1 - u * u) - u * (Math.PI / 2 - Math.asin(u))) / Math.PI;
});

function aboveFast(mean: number, amplitude: number, threshold: number): number {
  const below = threshold - mean;
  if (below >= amplitude) return 0;
  if (below <= -amplitude) return -below;
  const step = (below / amplitude + 1) * (STEPS / 2);
  const whole = step | 0;
  const low = sineTable[whole] as number;
  return amplitude * (low + (step - whole) * ((sineTable[whole + 1] as number) - low));
}

/** Single-sine degree days of one day, horizontal cutoff, by table: for long runs. C; `cap` null for none. */
function tabledDegreeDays(tmin: number, tmax: number, base: number, cap: number | null): number {
  if (tmax <= base) return 0;
  const mean = (tmax + tmin) / 2;
  const amplitude = (tmax - tmin) / 2;
  const above = tmin >= base ? mean - base : aboveFast(mean, amplitude, base);
  return cap !== null && tmax > cap ? above - aboveFast(mean, amplitude, cap) : above;
}

/**
 * Running sums of the same over `days` days of a series from `from`: `into[i]` is what the days before day i gave. One loop,
 * because it is most of what an outlook costs.
 */
export function sumTabledDegreeDays(
  into: Float64Array,
  { tminC, tmaxC }: Pick<WeatherYears, 'tminC' | 'tmaxC'>,
  from: number,
  days: number,
  base: number,
  cap: number,
): void {
  let sum = 0;
  for (let i = 0; i < days; i += 1) {
    into[i] = sum;
    const tmax = tmaxC[from + i] as number;
    if (tmax <= base) continue;
    const tmin = tminC[from + i] as number;
    const mean = (tmax + tmin) / 2;
    const amplitude = (tmax - tmin) / 2;
    const above = tmin >= base ? mean - base : aboveFast(mean, amplitude, base);
    sum += tmax > cap ? above - aboveFast(mean, amplitude, cap) : above;
  }
  into[days] = sum;
}

/** Single-sine degree days of every season, base and cap (null for none) in C, horizontal cutoff. */
export function yearlyDegreeDays(years: WeatherYears, baseC: number, capC: number | null): Float64Array {
  const { tminC, tmaxC } = years;
  const totals = new Float64Array(years.count);
  for (let season = 0; season < years.count; season += 1) {
    let total = 0;
    for (let i = season * DAYS_PER_YEAR; i < (season + 1) * DAYS_PER_YEAR; i += 1) {
      total += tabledDegreeDays(tminC[i] as number, tmaxC[i] as number, baseC, capC);
    }
    totals[season] = total;
  }
  return totals;
}

/** Mean and year-to-year standard deviation of degree days, C-degree-days a year. */
export function heatOfYear(years: WeatherYears, baseC: number, capC: number | null): MeanAndSd {
  return meanAndSd(yearlyDegreeDays(years, baseC, capC));
}

/** Days above this count as hot. Source: American Horticultural Society Plant Heat Zone Map, 86 F. */
export const HOT_DAY_C = 30;

/** Mean days a year with a maximum above 30 C. */
export function hotDays(years: WeatherYears): number {
  let hot = 0;
  for (let i = 0; i < years.tmaxC.length; i += 1) if ((years.tmaxC[i] as number) > HOT_DAY_C) hot += 1;
  return hot / years.count;
}

/** Most hot days a year of heat zones 2 to 11; zone 1 has fewer than one, zone 12 more than the last. Same source. */
const heatZoneUpTo = [7, 14, 30, 45, 60, 90, 120, 150, 180, 210] as const;

/** Heat zone 1 to 12 of a mean number of days above 30 C. */
export function heatZone(daysAbove30C: number): number {
  if (daysAbove30C < 1) return 1;
  const index = heatZoneUpTo.findIndex(upTo => daysAbove30C <= upTo);
  return index < 0 ? 12 : index + 2;
}
