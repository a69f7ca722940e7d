/** When the prices of a cultivar's lots moved, and why, newest first. */

import { addDays, type Day } from '../days.ts';
import { SEASONS_BACK_DAYS } from '../lots/scarcity.ts';
import type { Reason } from '../records/common.ts';
import type { PriceMove } from './event.ts';
import type { History, LotEvent } from './lotEvents.ts';
import type { LotPast } from './past.ts';
import type { Family, FamilyPrices, PastPrice } from './pastPrices.ts';

export interface PriceEvent extends LotEvent {
  moves: PriceMove[];
}

/** The reasons that an earlier answer does not have. */
function newReasons(was: readonly Reason[], is: readonly Reason[]): Reason[] {
  const told = new Set(was.map(({ text }) => text));
  return is.filter(({ text }) => !told.has(text));
}

/** What made a price move: the size or the scarcity where its class is another, else the new steps of the price itself. */
function whyMoved(was: PastPrice, is: PastPrice, moves: readonly PriceMove[]): Reason[] {
  const [{ form }] = moves as [PriceMove];
  return [
    ...(was.size.answer.classIndex === is.size.answer.classIndex
      ? []
      : newReasons(was.size.because, is.size.because)),
    ...(was.scarcity.answer === is.scarcity.answer
      ? []
      : newReasons(was.scarcity.because, is.scarcity.because)),
    ...newReasons(was.tiers[form]!.because, is.tiers[form]!.because),
  ];
}

function moveOn(past: LotPast, prices: FamilyPrices, before: Day, on: Day): PriceEvent {
  const [was, is] = [prices.priceOn(past, before), prices.priceOn(past, on)];
  const moves = past.lot.forms.flatMap((form): PriceMove[] => {
    const [from, to] = [was.tiers[form]?.answer.price, is.tiers[form]?.answer.price];
    return from && to && from.minor !== to.minor ? [{ form, from, to }] : [];
  });
  return {
    kind: 'price',
    lot: past.lot.id,
    moves,
    left: past.stockOn(on).left,
    because: whyMoved(was, is, moves),
  };
}

const onSale = (past: LotPast, on: Day) => past.lot.started <= on && past.stockOn(on).left > 0;

/** Days on which something was noted of a cultivar, or a lot of it grew too old to count for its scarcity; oldest first. */
function turningDays({ pasts }: Family, asOf: Day): Day[] {
  const days = pasts.flatMap(({ noted, lot }) => [...noted, addDays(lot.started, SEASONS_BACK_DAYS + 1)]);
  return [...new Set(days)].filter(on => on <= asOf).sort();
}

/**
 * The moves of all lots of a cultivar. Scarcity looks at all of them, so a count of one may move the others. A price that the yard's floor
 * lifts as weeks go by is told on the next of these days: the very day would tell the floor, which is private.
 */
export function* priceEvents(family: Family, prices: FamilyPrices, asOf: Day): History<PriceEvent> {
  const days = turningDays(family, asOf);
  for (let index = days.length - 1; index > 0; index -= 1) {
    const [before, on] = [days[index - 1]!, days[index]!];
    yield on;
    for (const past of family.pasts) {
      if (!onSale(past, before) || !onSale(past, on)) continue;
      if (prices.inShort(past, before) !== prices.inShort(past, on)) yield moveOn(past, prices, before, on);
    }
  }
}
