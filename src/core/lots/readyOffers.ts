/**
 * What can be had today of some lots: forms that are ready, each with its own price. A price that belongs to a form still to come, and trees of
 * a lot that is not ready, never stand beside the readiness of another.
 */

import type { Money } from '../money.ts';
import { type Form, forms } from '../records/formNames.ts';
import type { FormAnswer } from './answers.ts';

/** What has to be known of a lot. */
export interface OfferedLot {
  readonly forms: readonly Pick<FormAnswer, 'form' | 'state'>[];
  readonly tiers: Readonly<Partial<Record<Form, { answer: { price: Money } } | null>>>;
  readonly stock: { readonly left: number };
  readonly soldOut: boolean;
}

export interface ReadyOffers {
  /** Lots that are ready in one form at least. */
  lots: number;
  /** Trees of these lots; each counts once, in however many forms it can be had. */
  trees: number;
  /** The forms that are ready, in the order of `forms`. */
  forms: Form[];
  /** Lowest price of a form that is ready; null where none has a price. */
  lowest: Money | null;
  /** Whether forms that are ready differ in price. */
  pricesDiffer: boolean;
}

/** The forms in which a lot is ready, those asked for alone. */
export function readyForms(lot: OfferedLot, asked: readonly Form[] = forms): Form[] {
  if (lot.soldOut) return [];
  return asked.filter(form => lot.forms.some(answer => answer.form === form && answer.state === 'ready'));
}

/** What of some lots is ready in the forms asked for. */
export function readyOffers(lots: readonly OfferedLot[], asked: readonly Form[] = forms): ReadyOffers {
  const ready = lots
    .map(lot => ({ lot, forms: readyForms(lot, asked) }))
    .filter(each => each.forms.length > 0);
  const prices = ready
    .flatMap(each => each.forms.flatMap(form => each.lot.tiers[form]?.answer.price ?? []))
    .sort((a, b) => a.minor - b.minor);
  const [lowest = null] = prices;
  return {
    lots: ready.length,
    trees: ready.reduce((sum, { lot }) => sum + lot.stock.left, 0),
    forms: forms.filter(form => ready.some(each => each.forms.includes(form))),
    lowest,
    pricesDiffer: prices.at(-1)?.minor !== lowest?.minor,
  };
}
