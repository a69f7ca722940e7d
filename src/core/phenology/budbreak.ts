/** Budbreak: the day that completes the species' heat, counted from spring or from the end of chilling. */
import { sineDegreeDays } from '../climate/degreeDays.ts';
import type { DayRule } from '../climate/forecast.ts';
import type { Species } from '../records/species.ts';

export interface HeatNeed {
  /** C-degree-days, single sine with a horizontal cap. */
  readonly heat: number;
  readonly baseC: number;
  readonly capC: number;
}

export function budbreakNeed({ budbreakHeat, heatBaseC, heatCapC }: Species): HeatNeed {
  return { heat: budbreakHeat.value, baseC: heatBaseC.value, capC: heatCapC.value };
}

/**
 * Budbreak as a rule that watches day after day, started on the day from which heat counts (`heatCountsFrom` in `heatStart.ts`).
 * The same day as `heatMetOn` finds in sums.
 */
export function budbreak({ heat, baseC, capC }: HeatNeed): () => DayRule {
  return () => {
    let sum = 0;
    return (tminC, tmaxC) => {
      sum += sineDegreeDays(tminC, tmaxC, baseC, capC);
      return sum >= heat;
    };
  };
}
