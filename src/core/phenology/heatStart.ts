/** From which day heat counts toward budbreak and bloom: spring, or the end of chilling where that comes later. */
import { DAYS_PER_YEAR, daysForward, wrapDoy } from '../climate/calendar.ts';
import { chillingHour, chillPortionCounter, tabledRates } from '../climate/chill.ts';
import { type SunTimes, sunTimes } from '../climate/dayLength.ts';
import { type DayExtremes, fillHours } from '../climate/hourly.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import type { Species } from '../records/species.ts';
import { type ChillNeed, type ChillOfPlace, chillNeed } from './chill.ts';
import { growingCalendar } from './growingYear.ts';

/** Winters looked at for the day; they only place budbreak in mild winters. Standing: ours. */
const WINTERS = 7;
/**
 * A winter that gives this many times the need has met it by March 1, when heat starts to count: at least half of the chill
 * of October to March falls before it. Standing: ours.
 */
const AMPLE = 2;
const CHILL_FROM_DOY_NORTH = 274;
const CHILL_FROM_DOY_SOUTH = 91;
const CHILL_DAYS = 182;

/** Chill summed day by day over `WINTERS` winters: [winter][day] at winter * CHILL_DAYS + day. */
interface ChillSums {
  readonly portions: Float64Array;
  readonly hours: Float64Array;
}

/** Counts no further than the largest needs: the sums behind them stay 0. */
function chillSums(years: WeatherYears, most: Readonly<Record<ChillNeed['unit'], number>>): ChillSums {
  const fromDoy = years.lat < 0 ? CHILL_FROM_DOY_SOUTH : CHILL_FROM_DOY_NORTH;
  const into = daysForward(years.firstDoy, fromDoy);
  const suns: SunTimes[] = Array.from({ length: CHILL_DAYS + 2 }, (_, i) =>
    sunTimes(years.lat, wrapDoy(fromDoy - 1 + i)),
  );
  const winters = Math.min(WINTERS, years.count);
  const portions = new Float64Array(winters * CHILL_DAYS);
  const hours = new Float64Array(winters * CHILL_DAYS);
  const temperatures = new Float64Array(24);
  const extremes = (at: number): DayExtremes => ({
    tminC: years.tminC[at] as number,
    tmaxC: years.tmaxC[at] as number,
  });
  for (let winter = 0; winter < winters; winter += 1) {
    const first = winter * DAYS_PER_YEAR + into;
    const countPortions = chillPortionCounter(tabledRates);
    let [sumPortions, sumHours] = [0, 0];
    for (let day = 0; day < CHILL_DAYS; day += 1) {
      if (sumPortions >= most.portions && sumHours >= most.hours) break;
      const at = first + day;
      const sun = [suns[day], suns[day + 1], suns[day + 2]] as [SunTimes, SunTimes, SunTimes];
      fillHours(temperatures, 0, [extremes(at - 1), extremes(at), extremes(at + 1)], sun);
      for (const tC of temperatures) {
        if (most.portions > 0) sumPortions += countPortions(tC);
        sumHours += chillingHour(tC);
      }
      portions[winter * CHILL_DAYS + day] = sumPortions;
      hours[winter * CHILL_DAYS + day] = sumHours;
    }
  }
  return { portions, hours };
}

/** Day since the start of chilling on which the middle winter has met a need; the last day when it does not. */
function middleDay(sums: Float64Array, need: number): number {
  const days: number[] = [];
  for (let from = 0; from < sums.length; from += CHILL_DAYS) {
    const found = sums.subarray(from, from + CHILL_DAYS).findIndex(sum => sum >= need);
    days.push(found < 0 ? CHILL_DAYS : found);
  }
  days.sort((a, b) => a - b);
  return days[days.length >> 1] as number;
}

/**
 * Index in the growing year from which heat counts, for several needs at one place: March 1 (September 1 south), or the day
 * the middle winter meets the chill need where that is later. Where it does not meet it, the end of the chilling months:
 * such a tree wakes late. `chill` is the chill of the place where it is known: it saves counting where winters are ample.
 */
export function heatCountsFrom(
  years: WeatherYears,
  needs: readonly (ChillNeed | null)[],
  chill: ChillOfPlace | null,
): number[] {
  const fromDoy = years.lat < 0 ? CHILL_FROM_DOY_SOUTH : CHILL_FROM_DOY_NORTH;
  const { firstDoy, heatFrom } = growingCalendar(years.lat);
  const toMidwinter = daysForward(fromDoy, firstDoy);
  const counted = needs.map(need =>
    need === null || (chill && chill[need.unit].p10 >= AMPLE * need.value) ? null : need,
  );
  if (counted.every(need => need === null)) return counted.map(() => heatFrom);
  const largest = (unit: ChillNeed['unit']) =>
    Math.max(0, ...counted.map(need => (need?.unit === unit ? need.value : 0)));
  const sums = chillSums(years, { portions: largest('portions'), hours: largest('hours') });
  return counted.map(need =>
    need === null ? heatFrom : Math.max(heatFrom, middleDay(sums[need.unit], need.value) - toMidwinter),
  );
}

/** Index in the growing year from which heat counts, by the id of the species. */
export type HeatStarts = Readonly<Record<string, number>>;

/** The heat start of each species of a list at one place. */
export function heatStarts(
  years: WeatherYears,
  speciesList: readonly Species[],
  chill: ChillOfPlace | null,
): HeatStarts {
  const days = heatCountsFrom(years, speciesList.map(chillNeed), chill);
  return Object.fromEntries(speciesList.map(({ id }, i) => [id, days[i] as number]));
}
