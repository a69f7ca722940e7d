/** What the pages of a cultivar and its lots show, as one hash: they show each other, so they change together. */

import type { Catalogue, CultivarEntry, LotEntry } from '../core/catalogue.ts';
import { hashOf } from '../pageReuse.ts';
import { alternativeRows } from './alternatives.ts';
import { oncePer } from './memo.ts';

/** A lot without what its cultivar says. */
function ownAnswers({ cultivar: _cultivar, species: _species, ...answers }: LotEntry): unknown {
  return answers;
}

const shownBy = oncePer(
  (all: Catalogue) =>
    new Map(
      all.cultivars.map(entry => [
        entry.cultivar.id,
        hashOf(entry.cultivar, entry.flavour, entry.lots.map(ownAnswers), alternativeRows(all, entry.cultivar)),
      ]),
    ),
);

/** Changes with everything of a cultivar that its page, the pages of its lots and its comparison show: traits, lots, alternatives. */
export function shownOfCultivar(all: Catalogue, { cultivar }: Pick<CultivarEntry, 'cultivar'>): string {
  return shownBy(all).get(cultivar.id)!;
}
