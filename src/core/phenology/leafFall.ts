/** Leaf fall: the first night cold enough to take the leaves, or a spell of cool days, whichever comes first. */
import type { DayRule } from '../climate/forecast.ts';
import type { Species } from '../records/species.ts';
import type { YearOfDays } from './growingYear.ts';

export interface LeafFallFigures {
  /** The first night this cold takes the leaves, C. */
  readonly nightC: number;
  /** Leaves fall once the mean of the last `spellDays` days is below this, C. */
  readonly meanC: number;
  readonly spellDays: number;
}

export function leafFallFigures(species: Species): LeafFallFigures {
  return {
    nightC: species.leafFallNightC.value,
    meanC: species.leafFallMeanC.value,
    spellDays: Math.round(species.leafFallSpellDays.value),
  };
}

/**
 * Leaf fall as a rule that watches day after day, for a tree in leaf on the day it starts; over a whole year it is started at
 * midsummer. The spell is told by a mean over its days and not by days in a row: one mild day does not keep leaves up.
 */
export function leafFall({ nightC, meanC, spellDays }: LeafFallFigures): () => DayRule {
  return () => {
    const spell = new Float64Array(spellDays);
    let sum = 0;
    return (tminC, tmaxC, since) => {
      const slot = since % spellDays;
      const today = (tminC + tmaxC) / 2;
      sum += today - (spell[slot] as number);
      spell[slot] = today;
      return tminC <= nightC || (since >= spellDays - 1 && sum < meanC * spellDays);
    };
  };
}

/**
 * The same over a whole year: index of the first day from `since` to before `until` on which it comes true; `until` when none does. No list of the
 * days of the spell is kept, because this is asked of every weather year.
 */
export function leafFallOn(
  { tminC, tmaxC, from }: YearOfDays,
  since: number,
  until: number,
  { nightC, meanC, spellDays }: LeafFallFigures,
): number {
  const coolSum = meanC * spellDays;
  const full = from + since + spellDays;
  let sum = 0;
  for (let at = from + since; at < from + until; at += 1) {
    const low = tminC[at] as number;
    const gone = at - spellDays;
    const left = at < full ? 0 : ((tminC[gone] as number) + (tmaxC[gone] as number)) / 2;
    sum += (low + (tmaxC[at] as number)) / 2 - left;
    if (low <= nightC || (at >= full - 1 && sum < coolSum)) return at - from;
  }
  return until;
}
