/** Prices that moved, and what moved them. */

import type { Catalogue, LotEntry, PublicYard } from '../catalogue.ts';
import type { Money } from '../money.ts';
import { type Form, forms } from '../records/common.ts';
import type { NamedLot } from './lotChanges.ts';
import { pairsOf } from './pairs.ts';

/**
 * override: a price of its own was given, taken back or changed; base: the base price of the species; size: the size class; scarcity;
 * settings: the ladder, its steps or the rounding; floor: none of these, so the price is held up, or no longer held up, by what such a
 * tree must bring.
 */
export type PriceCause =
  | { cause: 'override'; from: Money | null; to: Money | null; why: string | null }
  | { cause: 'base'; species: string; from: number | null; to: number | null }
  | { cause: 'size'; from: string; to: string }
  | { cause: 'scarcity'; from: number; to: number }
  | { cause: 'settings' }
  | { cause: 'floor' };

export interface PriceChange extends NamedLot {
  form: Form;
  from: Money;
  to: Money;
  causes: PriceCause[];
}

interface Priced {
  entry: LotEntry;
  yard: PublicYard;
}

/** A lot's own price as money, null where the price is computed. */
function ownPrice({ entry, yard }: Priced): Money | null {
  const { price } = entry.lot;
  return price === null ? null : { minor: price.minor, currency: yard.currency };
}

/** Everything about prices but the base prices, as text to be compared. */
function settingsOf({ prices, currency }: PublicYard, form: Form): string {
  const { base: _own, formSteps, ...rest } = prices;
  return JSON.stringify([rest, formSteps[form], currency]);
}

function causesOf(then: Priced, now: Priced, form: Form): PriceCause[] {
  const [ownThen, ownNow] = [ownPrice(then), ownPrice(now)];
  if (ownThen?.minor !== ownNow?.minor) {
    return [{ cause: 'override', from: ownThen, to: ownNow, why: now.entry.lot.price?.why ?? null }];
  }
  // With the same price of its own before and after, only the lowest price can have moved it.
  if (ownNow !== null) return [{ cause: 'floor' }];
  const causes: PriceCause[] = [];
  const species = now.entry.species.id;
  const [baseThen, baseNow] = [then.yard.prices.base[species] ?? null, now.yard.prices.base[species] ?? null];
  if (baseThen !== baseNow) causes.push({ cause: 'base', species, from: baseThen, to: baseNow });
  const [sizeThen, sizeNow] = [then.entry.size.answer.name, now.entry.size.answer.name];
  if (sizeThen !== sizeNow) causes.push({ cause: 'size', from: sizeThen, to: sizeNow });
  const [scarceThen, scarceNow] = [then.entry.scarcity.answer, now.entry.scarcity.answer];
  if (scarceThen !== scarceNow) causes.push({ cause: 'scarcity', from: scarceThen, to: scarceNow });
  if (settingsOf(then.yard, form) !== settingsOf(now.yard, form)) causes.push({ cause: 'settings' });
  return causes.length > 0 ? causes : [{ cause: 'floor' }];
}

/** Prices of lots that were and are on the list, by lot and form. */
export function priceChanges(before: Catalogue, after: Catalogue): PriceChange[] {
  return pairsOf(before, after)
    .filter(({ now }) => !now.soldOut)
    .flatMap(({ then, now }) =>
      forms.flatMap((form): PriceChange[] => {
        const [from, to] = [then.tiers[form]?.answer, now.tiers[form]?.answer];
        if (
          !from ||
          !to ||
          (from.price.minor === to.price.minor && from.price.currency === to.price.currency)
        )
          return [];
        const causes = causesOf({ entry: then, yard: before.yard }, { entry: now, yard: after.yard }, form);
        return [
          { lot: now.lot.id, cultivar: now.cultivar.name, form, from: from.price, to: to.price, causes },
        ];
      }),
    );
}
