/** Prices that moved, judged by what was asked when the site was published: never from what today's settings would have asked. */

import type { Day } from '../days.ts';
import type { LotAnswers } from '../lots/answers.ts';
import { FLOOR_WORDS } from '../lots/tier.ts';
import { type AskedLine, type ChangeLine, isEventLine } from '../records/change.ts';
import type { Form } from '../records/common.ts';
import type { Lot } from '../records/lot.ts';
import type { PriceMove } from './event.ts';
import type { DatedEvent } from './unpublished.ts';

/** A lot on the list with its prices of today. */
export interface PricedLot extends Pick<LotAnswers, 'tiers' | 'stock'> {
  lot: Lot;
  soldOut: boolean;
}

/** What was last asked for the forms of a lot, and since when. */
interface Asked {
  since: Day;
  currency: string;
  minors: Partial<Record<Form, number>>;
}

/** What was last asked for each lot, by its id. */
export function lastAsked(lines: readonly ChangeLine[]): Map<string, Asked> {
  const asked = new Map<string, Asked>();
  for (const line of lines) {
    const moved = isEventLine(line)
      ? Object.fromEntries(line.moves.map(({ form, to }) => [form, to]))
      : line.asked;
    if (Object.keys(moved).length === 0) continue;
    const before = asked.get(line.lot);
    const kept = before?.currency === line.currency ? before.minors : {};
    asked.set(line.lot, { since: line.day, currency: line.currency, minors: { ...kept, ...moved } });
  }
  return asked;
}

type PriceEvent = DatedEvent & { moves: PriceMove[] };

export interface PriceNews {
  event: PriceEvent | null;
  /** Prices that are asked for the first time. */
  line: AskedLine | null;
}

/**
 * What is new about the prices of a lot on a day. A price that the yard's floor lifts as weeks go by is published when something of the cultivar is
 * noted next (`notedOn` is the last such day): the very day would give away the floor, which is private.
 */
export function priceNews(
  { lot, tiers, stock, soldOut }: PricedLot,
  before: Asked | undefined,
  { asOf, notedOn, currency }: { asOf: Day; notedOn: Day; currency: string },
): PriceNews {
  if (soldOut) return { event: null, line: null };
  const known = before?.currency === currency ? before.minors : {};
  const fresh: Partial<Record<Form, number>> = {};
  const moves: PriceMove[] = [];
  let because: PriceEvent['because'] = [];
  for (const form of lot.forms) {
    const tier = tiers[form];
    if (tier === undefined) continue;
    const { minor } = tier.answer.price;
    const was = known[form];
    if (was === undefined) fresh[form] = minor;
    else if (was !== minor) {
      const byFloor = tier.because.some(({ text }) => text === FLOOR_WORDS);
      if (byFloor && before !== undefined && notedOn <= before.since) continue;
      if (moves.length === 0) because = tier.because;
      moves.push({ form, from: { minor: was, currency }, to: { minor, currency } });
    }
  }
  return {
    event:
      moves.length === 0
        ? null
        : { kind: 'price', day: asOf, lot: lot.id, forms: [], moves, left: stock.free, because },
    line: Object.keys(fresh).length === 0 ? null : { day: asOf, lot: lot.id, asked: fresh, currency },
  };
}
