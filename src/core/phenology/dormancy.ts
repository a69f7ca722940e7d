/**
 * When a leafless tree is truly dormant: one rule for lots, for sending and for storing. All figures here are our working
 * figures; no published threshold for these species was found.
 */
import type { DayRule } from '../climate/forecast.ts';

/** Chilling hours run from 0 to 7.2 C. Sources: Bennett 1949, California Agriculture 3(11); Weinberger 1950. */
const CHILL_FROM_C = 0;
const CHILL_TO_C = 7.2;

/** Chilling hours since leaf fall after which a tree in its pot sleeps. Standing: ours. */
const DORMANT_CHILL_HOURS = 200;
/** The same before its roots are bared: lifting asks more of a tree. Standing: ours. */
const LIFTING_CHILL_HOURS = 300;
/** A week with a warmer mean may have woken it again, C. Standing: ours. */
export const DORMANT_WEEK_MEAN_C = 10;

const WEEK_DAYS = 7;
const HOURS_PER_DAY = 24;

/** What the tree is to be put through: stored or sent in its pot, or lifted with its roots bared. */
export type RestUse = 'in-pot' | 'bare-root';

export const chillHoursNeeded: Readonly<Record<RestUse, number>> = {
  'in-pot': DORMANT_CHILL_HOURS,
  'bare-root': LIFTING_CHILL_HOURS,
};

/** Share of a day that a sine between its extremes spends below a temperature. */
function shareBelow(limitC: number, meanC: number, halfRangeC: number): number {
  if (halfRangeC === 0) return limitC > meanC ? 1 : 0;
  const at = (limitC - meanC) / halfRangeC;
  if (at <= -1) return 0;
  return at >= 1 ? 1 : 0.5 + Math.asin(at) / Math.PI;
}

/** Hours of a day between 0 and 7.2 C, 0 to 24, from its lowest and highest temperature. The day is taken as a sine. */
export function chillHoursOfDay(tminC: number, tmaxC: number): number {
  const meanC = (tminC + tmaxC) / 2;
  const halfRangeC = (tmaxC - tminC) / 2;
  return (
    HOURS_PER_DAY * (shareBelow(CHILL_TO_C, meanC, halfRangeC) - shareBelow(CHILL_FROM_C, meanC, halfRangeC))
  );
}

/**
 * For a tree whose leaves are down on the day the rule is started: true once it has its chilling hours and the week before
 * (or the days since, where they are fewer) was cool. Buds are not watched: that is for whoever asks.
 */
export function restMet(use: RestUse): () => DayRule {
  const needed = chillHoursNeeded[use];
  return () => {
    const week = new Float64Array(WEEK_DAYS);
    let hours = 0;
    let sumC = 0;
    return (tminC, tmaxC, since) => {
      hours += chillHoursOfDay(tminC, tmaxC);
      const meanC = (tminC + tmaxC) / 2;
      const slot = since % WEEK_DAYS;
      sumC += meanC - (week[slot] as number);
      week[slot] = meanC;
      return hours >= needed && sumC / Math.min(since + 1, WEEK_DAYS) < DORMANT_WEEK_MEAN_C;
    };
  };
}
