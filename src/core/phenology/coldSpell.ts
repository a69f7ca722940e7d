/** The spell of cold days after leaf fall by which lots and calendars reckon a tree asleep. */
import type { DayRule } from '../climate/forecast.ts';

/** A day with a lower mean is a cold day towards dormancy. Common practice, no source. */
export const COLD_DAY_C = 10;

/** Dormant once a leafless tree has met enough cold days; a rule that watches day after day. */
export function coldSpell(days: number): () => DayRule {
  return () => {
    let cold = 0;
    return (tminC, tmaxC) => {
      if ((tminC + tmaxC) / 2 < COLD_DAY_C) cold += 1;
      return cold >= days;
    };
  };
}
