/** The days a calendar hangs on, read off the care year. All are days of the season. */

import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import { daysUntilForced, FORCING_NEED, SWELL_SHARE } from '../phenology/forcing.ts';
import { puttingAway, type Ripeness } from '../phenology/puttingAway.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import type { PotWinter } from './guideVocabulary.ts';

/** A stored tree is brought into the light no sooner than this before the safe day, days. Standing: ours. */
const WAKE_LEAD_DAYS = 42;
/** Nor later than this. */
const WAKE_LATEST_DAYS = 21;

/** The days for putting a pot away are this many at most, and at least, days. Standing: ours. */
const LONGEST_MOVE_IN_DAYS = 14;
const SHORTEST_MOVE_IN_DAYS = 5;

/** Where the coldest weeks give no leaf fall, the rest is taken this long either side of them, days. Standing: ours. */
export const HALF_REST_DAYS = 30;

/** How a pot spends the winter. */
export function potWinter({ potRiskFirst, coldRiskFirst }: CareYear): PotWinter {
  if (potRiskFirst.p50 !== null) return 'store';
  return potRiskFirst.p10 !== null || coldRiskFirst.young.p10 !== null ? 'shelter' : 'stand-out';
}

/** First day after the coldest weeks from which the usual mean is at least this; null where it never is. */
export function warmerThan({ meanC, coldestDay }: CareYear, limitC: number): number | null {
  if ((meanC[coldestDay] as number) >= limitC) return coldestDay;
  for (let at = coldestDay; at < coldestDay + DAYS_PER_YEAR; at += 1) {
    if ((meanC[at % DAYS_PER_YEAR] as number) >= limitC) return at;
  }
  return null;
}

/** After it a freeze at 32 F comes in at most 1 year in 10; null where none is to be feared at all. */
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

/**
 * When a stored pot goes in, and by when it must be in: after the cold its wood should meet and before the night it does not stand, by the rule of
 * `puttingAway.ts`, and before the mix of an open pot reaches the limit of the roots in one year in ten.
 */
export function moveInDays(year: CareYear, ripeness: Ripeness): { from: number; to: number } {
  const { leafFall, nights, potRiskFirst } = year;
  const { meets, before } = nights[ripeness];
  const { waitsForLeaves } = puttingAway[ripeness];
  const down = leafFall.p50 ?? 0;
  const met = meets.p50 ?? down;
  const wanted = waitsForLeaves ? Math.max(down, met) : Math.min(down, met);
  // Soft wood is not put at risk in one year in ten; what has hardened goes by the usual year, and by the forecast.
  const limit = (ripeness === 'soft' ? before.p10 : before.p50) ?? wanted + LONGEST_MOVE_IN_DAYS;
  const latest = Math.min(limit - 1, potRiskFirst.p10 ?? limit, wanted + LONGEST_MOVE_IN_DAYS);
  const to = Math.max(latest, leafFall.p10 ?? 0, 0);
  return {
    from: Math.max(Math.min(wanted, to - SHORTEST_MOVE_IN_DAYS), Math.min(leafFall.p10 ?? 0, to)),
    to,
  };
}

/** Mean of the bright place in which a tree wakes, C: 45 to 55 F is the aim, and a shed follows milder days. Standing: ours. */
const WAKING_PLACE_C = 10;

export interface Waking {
  /** It is brought into the light. */
  light: number;
  /** The first buds may swell, and the first leaves open. */
  swell: number;
  leaves: number;
  /** The slowest have leaves by then. */
  lastLeaves: number;
}

/** The days of a stored tree from the light to its leaves, by the heat of the place it wakes in and of the days outdoors. */
export function wakingOf(year: CareYear, safe: number): Waking {
  const light = wakeDay(year, safe);
  const meanOf = (since: number) => {
    const outdoors = year.meanC[(light + since + DAYS_PER_YEAR) % DAYS_PER_YEAR] as number;
    return light + since < safe ? Math.max(outdoors, WAKING_PLACE_C) : outdoors;
  };
  const after = (need: number) => light + (daysUntilForced(meanOf, need) ?? DAYS_PER_YEAR / 2);
  return {
    light,
    swell: after(SWELL_SHARE * FORCING_NEED.low),
    leaves: after(FORCING_NEED.low),
    lastLeaves: after(FORCING_NEED.high),
  };
}
