/** The weather a lot waits for, as rules that watch day after day. Each is made anew for every weather year. */

import type { DayRule } from '../climate/forecast.ts';

/** Roots do not grow below this daily mean. Standing: ours. */
export const ROOTING_BASE_C = 10;
/** A day with this mean counts as one warm day. Standing: ours. */
export const ROOTING_FULL_C = 24;
/** Most that one hot day counts. Standing: ours. */
const ROOTING_MOST = 1.2;

/** Days with a colder mean count less while a plant is weaned. Standing: ours. */
export const WEANING_COLD_C = 10;
/** What such a day counts. Standing: ours. */
export const WEANING_COLD_SHARE = 0.5;

/** A day with a lower mean is a cold day: soil cools and growth stops. Common practice, no source. */
export const COLD_DAY_C = 10;
/** Roots are bared after this many days whose mean stays below `COLD_DAY_C`. Standing: ours. */
export const COLD_SOIL_DAYS = 14;

const mean = (tminC: number, tmaxC: number) => (tminC + tmaxC) / 2;

/** What a day counts toward rooting: 0 at 10 C, 1 at 24 C. */
export function warmDay(tminC: number, tmaxC: number): number {
  const share = (mean(tminC, tmaxC) - ROOTING_BASE_C) / (ROOTING_FULL_C - ROOTING_BASE_C);
  return Math.min(Math.max(share, 0), ROOTING_MOST);
}

function adding(need: number, worth: (tminC: number, tmaxC: number) => number): () => DayRule {
  return () => {
    let sum = 0;
    return (tminC, tmaxC) => {
      sum += worth(tminC, tmaxC);
      return sum >= need;
    };
  };
}

/** Roots hold once enough warm days are counted. */
export const rooting = (warmDays: number) => adding(warmDays, warmDay);

/** Weaned once enough days have gone by, cold ones counting half. */
export const weaning = (days: number) =>
  adding(days, (tminC, tmaxC) => (mean(tminC, tmaxC) < WEANING_COLD_C ? WEANING_COLD_SHARE : 1));

/** The soil is cold once the mean of the last 14 days is below 10 C. */
export function coldSoil(): DayRule {
  const last = new Float64Array(COLD_SOIL_DAYS);
  let sum = 0;
  return (tminC, tmaxC, since) => {
    const slot = since % COLD_SOIL_DAYS;
    const today = mean(tminC, tmaxC);
    sum += today - last[slot]!;
    last[slot] = today;
    return since >= COLD_SOIL_DAYS - 1 && sum / COLD_SOIL_DAYS < COLD_DAY_C;
  };
}

/** One thing after another: the second rule starts on the day the first has happened, and sees its days from there. */
export function inTurn(first: () => DayRule, second: () => DayRule): () => DayRule {
  return () => {
    let running = first();
    let since = 0;
    let turned = false;
    return (tminC, tmaxC) => {
      const done = running(tminC, tmaxC, since);
      since += 1;
      if (turned || !done) return done;
      turned = true;
      running = second();
      since = 0;
      return false;
    };
  };
}
