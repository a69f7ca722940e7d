/** Winter chill of a place as a range over weather years. */
import { DAYS_PER_YEAR, daysForward, wrapDoy } from './calendar.ts';
import { chillingHour, chillPortionCounter, tabledRates, utahUnits } from './chill.ts';
import type { SunTimes } from './dayLength.ts';
import { sunTimes } from './dayLength.ts';
import type { DayExtremes } from './hourly.ts';
import { fillHours } from './hourly.ts';
import type { Spread } from './quantiles.ts';
import { spreadOf } from './quantiles.ts';
import type { WeatherYears } from './weatherYears.ts';

/** Chill is counted from October 1 to March 31, half a year later south of the equator. Standing: common practice. */
const CHILL_FROM_DOY_NORTH = 274;
const CHILL_FROM_DOY_SOUTH = 91;
const CHILL_DAYS = 182;

/** Winters looked at: hourly work is slow, and 40 give the 10 % point to about 2 portions. Standing: ours. */
export const CHILL_WINTERS = 40;

export interface ChillRange {
  /** Chill portions of the Dynamic Model. */
  readonly portions: Spread;
  /** Hours from 0 to 7.2 C. */
  readonly hours: Spread;
  /** Utah chill units. */
  readonly utah: Spread;
}

/** Chill over the first `winters` seasons. */
export function chillOfYears(years: WeatherYears, winters: number = CHILL_WINTERS): ChillRange {
  const fromDoy = years.lat < 0 ? CHILL_FROM_DOY_SOUTH : CHILL_FROM_DOY_NORTH;
  const into = daysForward(years.firstDoy, fromDoy);
  const suns: SunTimes[] = Array.from({ length: CHILL_DAYS + 2 }, (_, i) =>
    sunTimes(years.lat, wrapDoy(fromDoy - 1 + i)),
  );
  const hours = new Float64Array(24);
  const extremes = (at: number): DayExtremes => ({
    tminC: years.tminC[at] as number,
    tmaxC: years.tmaxC[at] as number,
  });
  const totals = Array.from({ length: Math.min(winters, years.count) }, (_, season) => {
    const first = season * DAYS_PER_YEAR + into;
    const count = chillPortionCounter(tabledRates);
    const total = { portions: 0, hours: 0, utah: 0 };
    let [before, today] = [extremes(first - 1), extremes(first)];
    for (let day = 0; day < CHILL_DAYS; day += 1) {
      const after = extremes(first + day + 1);
      const sun = [suns[day], suns[day + 1], suns[day + 2]] as [SunTimes, SunTimes, SunTimes];
      fillHours(hours, 0, [before, today, after], sun);
      for (const tC of hours) {
        total.portions += count(tC);
        total.hours += chillingHour(tC);
        total.utah += utahUnits(tC);
      }
      before = today;
      today = after;
    }
    return total;
  });
  return {
    portions: spreadOf(totals.map(total => total.portions)),
    hours: spreadOf(totals.map(total => total.hours)),
    utah: spreadOf(totals.map(total => total.utah)),
  };
}
