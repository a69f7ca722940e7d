/** What whoever receives a tree can do with it in the week it comes. */
import { DAYS_PER_YEAR, daysForward, seasonStartDoy, wrapDoy } from '../climate/calendar.ts';
import type { FreezeOdds } from '../climate/freezes.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { doyFromMonthDay } from '../days.ts';
import {
  chillHoursNeeded,
  chillHoursOfDay,
  DORMANT_WEEK_MEAN_C,
  type RestUse,
} from '../phenology/dormancy.ts';
import type { Form } from '../records/common.ts';

/** A dormant tree can be planted where the usual day is at least this warm and the ground is open, C. Standing: ours. */
const PLANTING_MEAN_C = 4;
/** Ground is taken to be frozen where the usual day is colder, C. Standing: ours. */
const FROZEN_MEAN_C = 0;
/** A tree in leaf may come this long before the late date of the last freeze, kept in on cold nights. Standing: ours. */
const LEAFED_BEFORE_LAST_FREEZE_DAYS = 14;
/** Trees that sleep in a cold store are sent until the usual day at the yard is this warm, C. Standing: ours. */
const STORED_UNTIL_MEAN_C = 15;

/** In an early fall trees sleep so much sooner than in the usual one, days. Whether a tree does is for its lot to say. Standing: ours. */
const EARLY_FALL_DAYS = 14;

/** Days of the year from one to another, both included. */
interface DoySpan {
  fromDoy: number;
  toDoy: number;
}

/** The year of a place as it matters to a parcel that leaves or reaches it. */
export interface ArrivalYear {
  /** Usual mean of each day, C, by `doy - 1`. */
  readonly meanC: Float64Array;
  /** When trees raised here can be dormant, outdoors or later in a cold store; null where it does not get cold enough. */
  readonly asleep: Readonly<Record<RestUse, DoySpan | null>>;
  /** First 32 F freeze of a middle year; null where there is none. */
  readonly firstFreezeDoy: number | null;
  /** Last 32 F freeze of a late year. */
  readonly lastFreezeDoy: number | null;
}

function usualDays({ tminC, tmaxC, firstDoy, count }: WeatherYears): {
  low: Float64Array;
  high: Float64Array;
} {
  const low = new Float64Array(DAYS_PER_YEAR);
  const high = new Float64Array(DAYS_PER_YEAR);
  for (let i = 0; i < tminC.length; i += 1) {
    const at = (firstDoy - 1 + i) % DAYS_PER_YEAR;
    low[at] = (low[at] as number) + (tminC[i] as number) / count;
    high[at] = (high[at] as number) + (tmaxC[i] as number) / count;
  }
  return { low, high };
}

/**
 * From two weeks before the day on which the usual year has given a tree the chill it needs, counted from when days turn cool,
 * until it is too warm for the trees that are still in the store.
 */
function asleepSpan(
  low: Float64Array,
  high: Float64Array,
  meanC: Float64Array,
  midsummer: number,
  use: RestUse,
): DoySpan | null {
  const at = (day: number) => wrapDoy(midsummer + day) - 1;
  let hours = 0;
  let from: number | null = null;
  for (let day = 0; day < DAYS_PER_YEAR; day += 1) {
    const usual = meanC[at(day)] as number;
    if (from !== null && usual >= STORED_UNTIL_MEAN_C)
      return { fromDoy: from, toDoy: wrapDoy(midsummer + day - 1) };
    if (usual >= DORMANT_WEEK_MEAN_C) continue;
    hours += chillHoursOfDay(low[at(day)] as number, high[at(day)] as number);
    if (from === null && hours >= chillHoursNeeded[use]) from = wrapDoy(at(day) + 1 - EARLY_FALL_DAYS);
  }
  return from === null ? null : { fromDoy: from, toDoy: midsummer };
}

/** The usual days over the weather years, when trees sleep in them, and the freezes that bound the year. */
export function arrivalYear(years: WeatherYears, freeze32F: FreezeOdds): ArrivalYear {
  const { low, high } = usualDays(years);
  const meanC = low.map((tminC, at) => (tminC + (high[at] as number)) / 2);
  const midsummer = seasonStartDoy(years.lat);
  const asleep = (use: RestUse) => asleepSpan(low, high, meanC, midsummer, use);
  const doy = (date: string | null) => (date === null ? null : doyFromMonthDay(date));
  return {
    meanC,
    asleep: { 'in-pot': asleep('in-pot'), 'bare-root': asleep('bare-root') },
    firstFreezeDoy: doy(freeze32F.first.p50),
    lastFreezeDoy: doy(freeze32F.last.p90),
  };
}

/**
 * `plant` at once; `hold` at 33 to 40 F for up to four weeks, or plant in a mild spell; `cold-store`: only somebody who has
 * one can take it; `settle`: a tree in leaf goes into shade and then sun; `freezing`: a tree in leaf would meet freezes.
 */
export type Receiving = 'plant' | 'hold' | 'cold-store' | 'settle' | 'freezing';

function freezesAround({ firstFreezeDoy, lastFreezeDoy }: ArrivalYear, doy: number): boolean {
  if (firstFreezeDoy === null || lastFreezeDoy === null) return false;
  const until = lastFreezeDoy - LEAFED_BEFORE_LAST_FREEZE_DAYS;
  return daysForward(firstFreezeDoy, doy) < daysForward(firstFreezeDoy, until);
}

/** What can be done with a tree of a form that arrives on a day of the year. */
export function receivingOf(there: ArrivalYear, form: Form, doy: number): Receiving {
  if (form === 'leafed-pot') return freezesAround(there, doy) ? 'freezing' : 'settle';
  const meanC = there.meanC[doy - 1] as number;
  if (meanC >= PLANTING_MEAN_C) return 'plant';
  return meanC >= FROZEN_MEAN_C ? 'hold' : 'cold-store';
}

/** Whether trees of a form that is sent asleep can be dormant at the yard on a day of the year. */
export function mayBeDormant(
  { asleep }: ArrivalYear,
  form: Exclude<Form, 'leafed-pot'>,
  doy: number,
): boolean {
  const span = asleep[form === 'bare-root' ? 'bare-root' : 'in-pot'];
  return span !== null && daysForward(span.fromDoy, doy) <= daysForward(span.fromDoy, span.toDoy);
}
