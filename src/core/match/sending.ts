/** Weeks in which a parcel meets neither a hard freeze nor an oven, at either end of its way. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { addDays, type Day, type DayRange, dayOfYear, dayParts, daysBetween, weekday } from '../days.ts';
import type { SendingRules } from '../records/yard.ts';
import type { SendingWeek, SendingWeeks } from './answers.ts';

/** Largest chance per trip of meeting a limit that a week may have and be open. Standing: ours. */
export const LARGEST_TRIP_RISK = 0.1;
const WEEKS_AHEAD = 52;

export type TripRules = Pick<SendingRules, 'coldestC' | 'hottestC' | 'transitDays'>;

/** Chances, by `doy - 1` of the day a parcel leaves, that the place meets a limit while the parcel is on its way. */
export interface TripRisks {
  /** A night at or below the cold limit. */
  readonly cold: Float64Array;
  /** A day at or above the heat limit. */
  readonly heat: Float64Array;
  readonly either: Float64Array;
}

/**
 * Counts over the weather years how often a trip that starts on each day meets a limit here. Both ends are watched on every
 * day of the trip: where the parcel is in between is not known. One pass from the end.
 */
export function tripRisks(years: WeatherYears, { coldestC, hottestC, transitDays }: TripRules): TripRisks {
  const { tminC, tmaxC, firstDoy } = years;
  const cold = new Float64Array(DAYS_PER_YEAR);
  const heat = new Float64Array(DAYS_PER_YEAR);
  const either = new Float64Array(DAYS_PER_YEAR);
  let nextCold = Number.POSITIVE_INFINITY;
  let nextHeat = Number.POSITIVE_INFINITY;
  for (let i = tminC.length - 1; i >= 0; i -= 1) {
    if ((tminC[i] as number) <= coldestC) nextCold = i;
    if ((tmaxC[i] as number) >= hottestC) nextHeat = i;
    const meetsCold = nextCold - i <= transitDays;
    const meetsHeat = nextHeat - i <= transitDays;
    if (!meetsCold && !meetsHeat) continue;
    const doy = (firstDoy - 1 + i) % DAYS_PER_YEAR;
    if (meetsCold) cold[doy] = (cold[doy] as number) + 1;
    if (meetsHeat) heat[doy] = (heat[doy] as number) + 1;
    either[doy] = (either[doy] as number) + 1;
  }
  const share = (counts: Float64Array) => counts.map(hits => hits / years.count);
  return { cold: share(cold), heat: share(heat), either: share(either) };
}

/** Chance that a trip leaving on a day meets a limit at either end. The two ends count as independent, which errs high. */
export function tripRisk(home: TripRisks, destination: TripRisks, leaving: Day): number {
  const at = dayOfYear(leaving) - 1;
  const here = home.either[at] as number;
  if (home === destination) return here;
  return 1 - (1 - here) * (1 - (destination.either[at] as number));
}

/** ISO 8601 week of a day: its Thursday decides the year. */
export function isoWeek(of: Day): { isoYear: number; isoWeek: number; monday: Day } {
  const monday = addDays(of, 1 - weekday(of));
  const thursday = addDays(monday, 3);
  const { year } = dayParts(thursday);
  const newYear = `${String(year).padStart(4, '0')}-01-01` as Day;
  return { isoYear: year, isoWeek: Math.floor(daysBetween(newYear, thursday) / 7) + 1, monday };
}

/** Days of a week on which parcels leave. */
export function sendingDays(monday: Day, weekdays: readonly number[]): Day[] {
  return [...weekdays].sort((a, b) => a - b).map(number => addDays(monday, number - 1));
}

function weekOf(
  home: TripRisks,
  destination: TripRisks,
  { weekdays }: Pick<SendingRules, 'weekdays'>,
  monday: Day,
): SendingWeek {
  const risk = sendingDays(monday, weekdays).reduce(
    (most, leaving) => Math.max(most, tripRisk(home, destination, leaving)),
    0,
  );
  return { ...isoWeek(monday), risk, open: risk <= LARGEST_TRIP_RISK };
}

function openRanges(weeks: readonly SendingWeek[]): DayRange[] {
  const ranges: DayRange[] = [];
  weeks.forEach((week, i) => {
    if (!week.open) return;
    const to = addDays(week.monday, 6);
    const running = ranges.at(-1);
    if (running && weeks[i - 1]?.open) running.to = to;
    else ranges.push({ from: week.monday, to });
  });
  return ranges;
}

/** The 52 weeks from the week of a day on. A week is open when each of its sending days keeps to `LARGEST_TRIP_RISK`. */
export function sendingWeeks(
  home: TripRisks,
  destination: TripRisks,
  rules: Pick<SendingRules, 'weekdays'>,
  from: Day,
): SendingWeeks {
  const { monday } = isoWeek(from);
  const weeks = Array.from({ length: WEEKS_AHEAD }, (_, i) =>
    weekOf(home, destination, rules, addDays(monday, 7 * i)),
  );
  return { weeks, ranges: openRanges(weeks) };
}
