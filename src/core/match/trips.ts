/** Trips of parcels over the weather years: how many keep to the limits at one end, and how long one waits for a trip that does. */
import { DAYS_PER_YEAR, daysForward } from '../climate/calendar.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import type { TripLimits } from '../records/sending.ts';

/** Lowest and highest temperature of a day, C. */
export interface DayAtEnd {
  tminC: number;
  tmaxC: number;
}

/** What a trip breaks at one end: `cold`, a night at or below the limit; `heat`, a day at or above it. */
export type Breach = 'cold' | 'heat';

/** What a trip over these days breaks. Watched from the day of pick-up to the porch: where the parcel is in between is not known. */
export function breachesOf(days: readonly DayAtEnd[], { coldestC, hottestC }: TripLimits): Breach[] {
  const breaches: Breach[] = [];
  if (days.some(({ tminC }) => tminC <= coldestC)) breaches.push('cold');
  if (days.some(({ tmaxC }) => tmaxC >= hottestC)) breaches.push('heat');
  return breaches;
}

/** Chances, 0 to 1, by `doy - 1` of the day a parcel leaves, that a place breaks a limit while it is on its way. */
export interface TripRisks {
  readonly cold: Float64Array;
  readonly heat: Float64Array;
  readonly either: Float64Array;
}

/**
 * Counts over the weather years how often a trip that starts on each day meets a limit here, on any of its `transitDays + 1`
 * days. One pass from the end.
 */
export function tripRisks(
  years: WeatherYears,
  { coldestC, hottestC }: TripLimits,
  transitDays: number,
): TripRisks {
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

/** Years that waits are counted in: the middle one is then good to a day or two. Standing: ours. */
const WAIT_SEASONS = 200;

/**
 * For each day of the first years, from January 1 on, 1 where a trip that starts on it keeps to the limits. Every place
 * starts on the same day of the year, so that two of them can be laid on each other.
 */
export function passingDays(years: WeatherYears, limits: TripLimits, transitDays: number): Uint8Array {
  const { tminC, tmaxC, firstDoy } = years;
  const from = daysForward(firstDoy, 1);
  const length = Math.min(WAIT_SEASONS, years.count - 1) * DAYS_PER_YEAR;
  const passes = new Uint8Array(length);
  let next = Number.POSITIVE_INFINITY;
  for (let i = from + length + transitDays - 1; i >= from; i -= 1) {
    if ((tminC[i] as number) <= limits.coldestC || (tmaxC[i] as number) >= limits.hottestC) next = i;
    if (i < from + length && next - i > transitDays) passes[i - from] = 1;
  }
  return passes;
}

/** Longest wait that is counted, days. */
export const LONGEST_WAIT_DAYS = 120;

/** Days from a sending day to the next that passes, by `doy - 1`; `LONGEST_WAIT_DAYS` or more is told as that. */
export interface WaitsFrom {
  /** Half the years wait no longer. */
  readonly middle: Uint8Array;
  /** Nine years in ten wait no longer. */
  readonly late: Uint8Array;
}

function quantiles(counts: Uint16Array, total: number): [middle: number, late: number] {
  let [seen, middle] = [0, -1];
  for (let days = 0; days < counts.length; days += 1) {
    seen += counts[days] as number;
    if (middle < 0 && seen >= total * 0.5) middle = days;
    if (seen >= total * 0.9) return [middle, days];
  }
  return [middle, LONGEST_WAIT_DAYS];
}

/**
 * Waits for a trip that passes at both ends, by weekday (ISO, 1 Monday to 7) of the sending day they are counted from. The two ends are
 * drawn independently of each other, which errs high.
 */
export function tripWaits(
  home: Uint8Array,
  there: Uint8Array,
  weekdays: readonly number[],
): ReadonlyMap<number, WaitsFrom> {
  const days = [...weekdays].sort((a, b) => a - b);
  const seasons = Math.floor(Math.min(home.length, there.length) / DAYS_PER_YEAR);
  const length = seasons * DAYS_PER_YEAR;
  const gaps = days.map((weekday, k) => (((days[(k + 1) % days.length] as number) - weekday + 6) % 7) + 1);
  const waits = days.map(() => new Uint8Array(length));
  for (let i = length - 1; i >= 0; i -= 1) {
    const passes = home[i] === 1 && there[i] === 1;
    for (let k = 0; k < days.length; k += 1) {
      const gap = gaps[k] as number;
      const after = (waits[(k + 1) % days.length] as Uint8Array)[i + gap] ?? 0;
      (waits[k] as Uint8Array)[i] = passes ? 0 : Math.min(gap + after, LONGEST_WAIT_DAYS);
    }
  }
  const counts = new Uint16Array(LONGEST_WAIT_DAYS + 1);
  return new Map(
    days.map((weekday, k) => {
      const middle = new Uint8Array(DAYS_PER_YEAR);
      const late = new Uint8Array(DAYS_PER_YEAR);
      for (let day = 0; day < DAYS_PER_YEAR; day += 1) {
        counts.fill(0);
        for (let at = day; at < length; at += DAYS_PER_YEAR) {
          const wait = (waits[k] as Uint8Array)[at] as number;
          counts[wait] = (counts[wait] as number) + 1;
        }
        [middle[day], late[day]] = quantiles(counts, seasons);
      }
      return [weekday, { middle, late }];
    }),
  );
}
