/** Whether winters give a species the chill it needs. */
import type { ChillRange } from '../climate/chillYears.ts';
import type { Species } from '../records/species.ts';

/** `met` in nine winters in ten; `short` when the middle winter gives less than the least said to do; else `doubtful`. */
export type ChillState = 'met' | 'doubtful' | 'short';

/** Chill of the place by either count. */
export type ChillOfPlace = Pick<ChillRange, 'portions' | 'hours'>;

export interface ChillNeed {
  readonly unit: 'portions' | 'hours';
  readonly value: number;
  /** Low end of the range: with less the tree does not wake properly. */
  readonly least: number;
}

/** Portions where the species gives them: they tell mild winters apart better than hours. Null when it gives neither. */
export function chillNeed({ chillPortions, chillHours }: Species): ChillNeed | null {
  if (chillPortions) return { unit: 'portions', value: chillPortions.value, least: chillPortions.low };
  return chillHours ? { unit: 'hours', value: chillHours.value, least: chillHours.low } : null;
}

export function chillState(need: ChillNeed | null, chill: ChillOfPlace): ChillState {
  if (need === null || need.value <= chill[need.unit].p10) return 'met';
  return need.least <= chill[need.unit].p50 ? 'doubtful' : 'short';
}
