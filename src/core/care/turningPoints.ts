/** The days a calendar hangs on, read off the care year. All are days of the season. */

import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import type { PotWinter } from './guideVocabulary.ts';

/** A stored tree is brought into the light no sooner than this before the safe day, days. Standing: ours. */
const WAKE_LEAD_DAYS = 42;
/** Nor later than this. */
const WAKE_LATEST_DAYS = 21;

/** Where the coldest weeks give no leaf fall, the rest is taken this long either side of them, days. Standing: ours. */
export const HALF_REST_DAYS = 30;

/** How a pot spends the winter. */
export function potWinter({ potRiskFirst, winterLowC, species }: CareYear): PotWinter {
  if (potRiskFirst.p50 !== null) return 'store';
  const woodAtRisk = winterLowC <= species.dormantFirstWinterC.value;
  return potRiskFirst.p10 !== null || woodAtRisk ? 'shelter' : 'stand-out';
}

/** First day after the coldest weeks from which the usual mean is at least this; null where it never is. */
export function warmerThan({ meanC, coldestDay }: CareYear, limitC: number): number | null {
  if ((meanC[coldestDay] as number) >= limitC) return coldestDay;
  for (let at = coldestDay; at < coldestDay + DAYS_PER_YEAR; at += 1) {
    if ((meanC[at % DAYS_PER_YEAR] as number) >= limitC) return at;
  }
  return null;
}

/** After it a freeze at 32 F comes in at most 1 year of 10; null where none is to be feared at all. */
export function safeDay({ lastFreeze }: CareYear): number | null {
  return lastFreeze['32F'].p90;
}

/** The earliest day of a first freeze that a careful grower reckons with: 1 year in 10. */
export function earlyFreeze({ firstFreeze }: CareYear): number | null {
  return firstFreeze['32F'].p10;
}

/** When a tree that keeps its rhythm by cold, or else by the coolest weeks, starts to grow. */
export function growthStarts({ budbreak, evergreen, coldestDay }: CareYear): {
  early: number;
  middle: number;
} {
  const byRest = coldestDay + HALF_REST_DAYS;
  if (evergreen || budbreak.p50 === null) return { early: byRest, middle: byRest };
  return { early: budbreak.p10 ?? budbreak.p50, middle: budbreak.p50 };
}

/** When growth ends, as a day of the next season. */
export function growthEnds({ leafFall, coldestDay }: CareYear): number {
  return (leafFall.p50 ?? coldestDay - HALF_REST_DAYS) + DAYS_PER_YEAR;
}

/** The last day on which a tree is fed, as a day of the season that follows its summer; may lie before day 0. */
export function lastFeed({ firstFreeze, leafFall, coldestDay }: CareYear): number {
  const freeze = firstFreeze['32F'].p50 ?? coldestDay - HALF_REST_DAYS;
  return Math.min(freeze, leafFall.p10 ?? freeze) - careFigures.stopFeeding.low;
}

/** When a stored tree is brought into the light. Only for places with a safe day. */
export function wakeDay(year: CareYear, safe: number): number {
  const warm = warmerThan(year, careFigures.wakeAtMean.low) ?? safe;
  return Math.min(Math.max(warm, safe - WAKE_LEAD_DAYS), safe - WAKE_LATEST_DAYS);
}

/** When a stored pot goes in, and by when it must be in. */
export function moveInDays(year: CareYear): { from: number; to: number } {
  const { leafFall, firstFreeze, potRiskFirst } = year;
  const nights = firstFreeze['24F'].p50 ?? firstFreeze['28F'].p50 ?? leafFall.p50 ?? 0;
  const wanted = Math.max(leafFall.p50 ?? 0, nights);
  const latest = potRiskFirst.p10 ?? wanted + 14;
  const to = Math.min(latest, Math.max(wanted + 7, firstFreeze['20F'].p50 ?? wanted + 14));
  return { from: Math.min(wanted, to), to };
}
