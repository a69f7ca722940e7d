/** What the pages of a cultivar and its lots show, as one hash: they show each other, so they change together. */

import type { Catalogue, CultivarEntry, LotEntry } from '../core/catalogue.ts';
import { hashOf } from '../pageReuse.ts';
import { alternativeRows } from './alternatives.ts';
import { oncePer } from './memo.ts';
import { cultivarPath, lotPath } from './paths.ts';

/**
 * A lot without what its cultivar says, and its short address, as text. Of plain JSON for its speed: thousands of lots are asked for, and
 * nothing of a lot is a map or a set, which JSON would leave out.
 */
function ownAnswers(
  all: Catalogue,
  { cultivar: _cultivar, species: _species, ...answers }: LotEntry,
): string {
  return JSON.stringify([answers, all.codes.get(lotPath(answers.lot.id))]);
}

const shownBy = oncePer(
  (all: Catalogue) =>
    new Map(
      all.cultivars.map(entry => [
        entry.cultivar.id,
        hashOf(
          entry.cultivar,
          entry.flavour,
          entry.lots.map(lot => ownAnswers(all, lot)).join('\n'),
          alternativeRows(all, entry.cultivar),
          all.codes.get(cultivarPath(entry.cultivar.id)),
        ),
      ]),
    ),
);

/** Changes with everything of a cultivar that its page, the pages of its lots and its comparison show: traits, lots, alternatives. */
export function shownOfCultivar(all: Catalogue, { cultivar }: Pick<CultivarEntry, 'cultivar'>): string {
  return shownBy(all).get(cultivar.id)!;
}

/** Changes with what guides show beyond the ground of all pages: which species the yard grows most of. */
export const shownOfGuides = oncePer((all: Catalogue): string =>
  all.species
    .map(({ id }) => `${id} ${all.cultivars.filter(({ cultivar }) => cultivar.species === id).length}`)
    .join('\n'),
);
