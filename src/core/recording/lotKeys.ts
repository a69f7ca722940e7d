/** Changes of single keys of a lot: its hold, its own price. */

import { type Day, dayInWords } from '../days.ts';
import { editYaml, type YamlChange } from '../editing/editYaml.ts';
import { parseAmount, priceInWords } from '../money.ts';
import type { Lot } from '../records/lot.ts';
import { writtenLot } from '../records/lot.ts';
import { lotOf, type OpenYard, type Planned } from './openYard.ts';

/** Keys of a lot in their usual order. */
const lotKeyOrder: readonly string[] = Object.keys(writtenLot.shape);

/** Changes keys of a lot in its file. `key` is the first step of the path below the lot. */
export function planLotChanges(
  { texts }: OpenYard,
  { file, index, id }: Lot,
  changes: readonly YamlChange[],
  said: string,
): Planned {
  const below = changes.map(
    (change): YamlChange => ({
      ...change,
      path: [index, ...change.path],
      ...(change.kind === 'set' ? { order: lotKeyOrder } : {}),
    }),
  );
  const edited = editYaml(texts.get(file) ?? '', below);
  if ('refused' in edited)
    return { refused: `lot ${id} in content/${file} was left alone: ${edited.refused}.` };
  return { changes: [{ path: file, text: edited.text }], said };
}

export interface HoldRequest {
  lot: string;
  /** Why nothing of it is sold; null lets it go again. Shown to customers. */
  why: string | null;
  since: Day;
}

/** Keeps a lot from sale, words a hold anew, or ends it. */
export function planHold(yard: OpenYard, { lot: id, why, since }: HoldRequest): Planned {
  const lot = lotOf(yard, id);
  if ('refused' in lot) return lot;
  if (why === null) {
    if (lot.hold === null) return { refused: `lot ${id} is not held.` };
    return planLotChanges(yard, lot, [{ kind: 'remove', path: ['hold'] }], `${id} is no longer held.`);
  }
  if (why.trim() === '') return { refused: 'say why it is held; customers read it.' };
  if (lot.hold !== null) {
    const said = `${id} stays held since ${dayInWords(lot.hold.since)}, for another reason: ${why}`;
    return planLotChanges(yard, lot, [{ kind: 'set', path: ['hold', 'why'], value: why }], said);
  }
  const said = `${id} is held from ${dayInWords(since)}: ${why}`;
  return planLotChanges(yard, lot, [{ kind: 'set', path: ['hold'], value: { since, why } }], said);
}

export interface PriceRequest {
  lot: string;
  /** Null gives the computed price back. */
  price: { amount: string; why?: string | undefined; until?: Day | undefined } | null;
}

/** Gives a lot a price of its own, or takes it away. */
export function planPrice(yard: OpenYard, { lot: id, price }: PriceRequest): Planned {
  const lot = lotOf(yard, id);
  if ('refused' in lot) return lot;
  if (price === null) {
    if (lot.price === null) return { refused: `lot ${id} has no price of its own.` };
    const changes: YamlChange[] = [{ kind: 'remove', path: ['price'] }];
    return planLotChanges(yard, lot, changes, `${id} goes by the computed price again.`);
  }
  const { currency } = yard.records.yard;
  const minor = parseAmount(price.amount, currency);
  if (minor === null)
    return {
      refused: `"${price.amount}" is no price; write it as 45 or 45.50, without the sign of the currency.`,
    };
  const why = price.why ?? lot.price?.why;
  if (!why?.trim()) return { refused: 'say why it has a price of its own; customers read it.' };
  const until = price.until ? ` until ${dayInWords(price.until)}` : '';
  const said = `${id} costs ${priceInWords({ minor, currency })}${until}: ${why}`;
  if (price.until && price.until < yard.today)
    return { refused: `${dayInWords(price.until)} is over already; give a later day with --until.` };
  if (lot.price === null)
    return planLotChanges(
      yard,
      lot,
      [
        {
          kind: 'set',
          path: ['price'],
          value: { amount: price.amount, why, ...(price.until ? { until: price.until } : {}) },
        },
      ],
      said,
    );
  const changes: YamlChange[] = [{ kind: 'set', path: ['price', 'amount'], value: price.amount }];
  if (why !== lot.price.why) changes.push({ kind: 'set', path: ['price', 'why'], value: why });
  if (price.until) changes.push({ kind: 'set', path: ['price', 'until'], value: price.until });
  return planLotChanges(yard, lot, changes, said);
}
