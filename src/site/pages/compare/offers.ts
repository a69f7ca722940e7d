/** What each form of a cultivar costs and how it stands, from one and the same lot. */

import type { Catalogue, CultivarEntry } from '../../../core/catalogue.ts';
import { byDay } from '../../../core/days.ts';
import { priceInWords } from '../../../core/money.ts';
import { type Form, forms } from '../../../core/records/common.ts';
import { sentNow } from '../../parts/sentNow.ts';
import { stateView } from '../../words/state.ts';
import { formWords } from '../../words/words.ts';
import type { Fact } from '../lots/lot.ts';

const bestFirst = ['ready', 'opens', 'look', 'blocked'] as const;

/** The lot that stands best in a form, of ready ones the cheapest: `$40: ready, sent by forecast from April 12, 2027`. */
function offerInWords({ lots }: CultivarEntry, form: Form, all: Catalogue): string {
  const offers = lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(({ forms: answers, tiers }) =>
      answers
        .filter(answer => answer.form === form)
        .map(answer => ({ answer, price: tiers[form]?.answer.price ?? null })),
    );
  const [best] = offers.toSorted(
    (a, b) =>
      bestFirst.indexOf(a.answer.state) - bestFirst.indexOf(b.answer.state) ||
      byDay(a.answer.range?.from ?? '', b.answer.range?.from ?? '') ||
      (a.price?.minor ?? Number.POSITIVE_INFINITY) - (b.price?.minor ?? Number.POSITIVE_INFINITY),
  );
  if (best === undefined) return 'None';
  const { words } = stateView(best.answer, all.asOf, sentNow(all)[form]);
  return best.price === null ? words : `${priceInWords(best.price)}. ${words}`;
}

/** A fact for each form of sale. */
export function offerFacts(all: Catalogue, entry: CultivarEntry): Fact[] {
  return forms.map(form => ({ label: formWords[form], value: offerInWords(entry, form, all) }));
}
