/** How hard a cultivar is to come by, 0 to 4, from evidence. Every step is told; how many people wait is not. */

import { type Day, daysBetween } from '../days.ts';
import type { Answer, Reason } from '../records/common.ts';
import type { Availability, Cultivar } from '../records/cultivar.ts';
import type { Lot } from '../records/lot.ts';
import type { ScarcityClass, StockCount } from './answers.ts';

/** Where the count starts, by how widely a cultivar is offered. Standing: ours. */
const offeredSteps: Record<Availability, { steps: number; words: string }> = {
  common: { steps: 0, words: 'Widely offered' },
  some: { steps: 1, words: 'Offered by some' },
  'a-few': { steps: 2, words: 'Offered by a few' },
  'nowhere-else': { steps: 3, words: 'Offered nowhere else that we know of' },
};

/** A cultivar that is widely offered is never called scarcer than this, whatever happens in one yard. Standing: ours. */
const COMMON_AT_MOST = 2;
/** So few mother plants are a bottleneck. Standing: ours. */
const FEW_MOTHERS = 1;
/** Seasons looked back on, in days. Standing: ours. */
const SEASONS_BACK_DAYS = 730;
/** Raised in that time: from here on it is no rarity here. Standing: ours. */
const MANY_RAISED = 100;
/** Sold in that time, as a share of those raised: nearly all find a home. Standing: ours. */
const NEARLY_ALL_SOLD = 0.8;
/** Fewer than this raised say nothing about how they sell. Standing: ours. */
const ENOUGH_TO_JUDGE = 5;

/** What the yard raised and sold of one cultivar in the last two seasons, and has now. */
export interface Supply {
  raised: number;
  sold: number;
  left: number;
}

export const noSupply: Supply = { raised: 0, sold: 0, left: 0 };

/** A supply with one more lot of the cultivar counted in, as it stands on a day. */
export function withLot(
  supply: Supply,
  { started }: Pick<Lot, 'started'>,
  stock: StockCount,
  asOf: Day,
): Supply {
  const recent = daysBetween(started, asOf) <= SEASONS_BACK_DAYS;
  return {
    raised: supply.raised + (recent ? stock.raised : 0),
    sold: supply.sold + (recent ? stock.sold : 0),
    left: supply.left + stock.left,
  };
}

/** The scarcity class of a cultivar. `requests` may move it; the reason for that gives no number. */
export function scarcityOf(
  { offered, mothers, requests }: Pick<Cultivar, 'offered' | 'mothers' | 'requests'>,
  { raised, sold, left }: Supply,
): Answer<ScarcityClass> {
  const { steps: start, words } = offeredSteps[offered];
  const because: Reason[] = [{ text: `${words}: starts at ${start}.`, standing: 'seen' }];
  let steps = start;
  const move = (by: 1 | -1, text: string) => {
    steps += by;
    because.push({ text: `${text}: one step ${by === 1 ? 'up' : 'down'}.`, standing: 'seen' });
  };
  if (mothers <= FEW_MOTHERS) move(1, mothers === 0 ? 'No mother plant left' : 'Only one mother plant');
  if (raised >= MANY_RAISED) move(-1, `${raised} raised in the last two seasons`);
  if (raised >= ENOUGH_TO_JUDGE && sold >= NEARLY_ALL_SOLD * raised) {
    move(1, `${sold} of the ${raised} raised in the last two seasons are sold`);
  }
  if (requests > left) move(1, 'More people ask for it than we can supply');
  const most = offered === 'common' ? COMMON_AT_MOST : 4;
  const kept = Math.min(Math.max(steps, 0), most);
  if (kept < steps)
    because.push({
      text: `Kept at ${kept}${offered === 'common' ? ', since it is widely offered' : ', the highest class'}.`,
      standing: 'ours',
    });
  return { answer: kept as ScarcityClass, because };
}
