/** How a lot's trees are put away in their pots for the winter to come: the one rule of `phenology/puttingAway.ts`, by what is known of the lot. */

import { addDays, type Day, dayInWords } from '../days.ts';
import { puttingAway, puttingAwayReasons, type Ripeness, ripenessOf } from '../phenology/puttingAway.ts';
import type { Answer, Reason } from '../records/common.ts';
import type { WoodSign } from '../records/walk.ts';
import type { Seen } from './answers.ts';
import { midsummerBefore } from './seasons.ts';
import { ownRootsSince, pottingOn, type Subject } from './subject.ts';

export interface PuttingAwayOfLot {
  readonly ripeness: Ripeness;
  /** When they go in, for people. */
  readonly when: string;
}

/** Wood told this year: what was seen before midsummer was the wood of the summer before. */
function woodOfTheYear(wood: Seen<WoodSign> | null, asOf: Day, south: boolean): Seen<WoodSign> | null {
  return wood !== null && wood.on >= midsummerBefore(asOf, south) ? wood : null;
}

const woodWords: Readonly<Record<WoodSign, string>> = {
  green: 'green',
  part: 'partly brown',
  brown: 'brown',
};

/**
 * Null for a lot that stands in no pot. Trees without a whole summer on their own roots before the last midsummer count as in their first
 * winter, whatever their wood: the careful side.
 */
export function puttingAwayOfLot(
  { lot, species, signs }: Pick<Subject, 'lot' | 'species' | 'signs'>,
  asOf: Day,
  south: boolean,
): Answer<PuttingAwayOfLot> | null {
  const potting = lot.lifted !== null && lot.lifted <= asOf ? null : pottingOn(lot, asOf);
  if (potting === null) return null;
  const { container } = potting;
  const since = ownRootsSince(lot);
  const firstWinter = since >= midsummerBefore(addDays(midsummerBefore(asOf, south), -1), south);
  const wood = woodOfTheYear(signs.wood, asOf, south);
  const ripeness = ripenessOf({
    species,
    potLiters: container.liters,
    firstWinter,
    wood: wood?.value ?? null,
  });
  const seen = wood === null ? '' : `, wood ${woodWords[wood.value]} on the walk of ${dayInWords(wood.on)}`;
  const known: Reason = {
    text: `${firstWinter ? 'Young' : 'Older than a year'}, on its own roots since ${dayInWords(since)}, in a ${container.written} pot${seen}.`,
    standing: 'seen',
  };
  return {
    answer: { ripeness, when: puttingAway[ripeness].when },
    because: [known, ...puttingAwayReasons(ripeness)],
  };
}
