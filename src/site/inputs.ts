/**
 * What files depend on beyond the global inputs, as hashes and texts that differ whenever it does. Pages of a cultivar and its lots show each
 * other, so they change together.
 */

import type { Catalogue, CultivarEntry, LotEntry } from '../core/catalogue.ts';
import { hashOf } from '../hash.ts';
import { cultivarPath, lotPath } from './addresses/paths.ts';
import { memoize } from './memo.ts';
import { readyLots } from './pages/places/placeTrees.ts';
import { alternativeRows } from './parts/alternatives.ts';
import type { ListPage, PagedList } from './parts/paging.ts';
import { listedCultivars } from './parts/raised.ts';

/**
 * A lot without what its cultivar says, and its short address, as text. Of plain JSON for its speed: thousands of lots are asked for, and
 * nothing of a lot is a map or a set, which JSON would leave out.
 */
function lotText(all: Catalogue, { cultivar: _cultivar, species: _species, ...answers }: LotEntry): string {
  return JSON.stringify([answers, all.codes.get(lotPath(answers.lot.id))]);
}

const cultivarHashes = memoize(
  (all: Catalogue) =>
    new Map(
      all.cultivars.map(entry => [
        entry.cultivar.id,
        hashOf(
          entry.cultivar,
          entry.flavor,
          entry.lots.map(lot => lotText(all, lot)).join('\n'),
          alternativeRows(all, entry.cultivar),
          all.codes.get(cultivarPath(entry.cultivar.id)),
        ),
      ]),
    ),
);

/** Changes with everything of a cultivar that its page, the pages of its lots and its comparison show: traits, lots, alternatives. */
export function cultivarInputs(all: Catalogue, { cultivar }: Pick<CultivarEntry, 'cultivar'>): string {
  return cultivarHashes(all).get(cultivar.id)!;
}

/** Changes with everything of any cultivar and lot. */
export const stockInputs = memoize((all: Catalogue): string => hashOf([...cultivarHashes(all).values()]));

/** Changes with what guides show beyond the global inputs: which species the yard grows most of. */
export const guideInputs = memoize((all: Catalogue): string =>
  all.species
    .map(({ id }) => `${id} ${all.cultivars.filter(({ cultivar }) => cultivar.species === id).length}`)
    .join('\n'),
);

/** Changes with what verdicts, rankings and seasons hang on: the traits of every cultivar, and which of them are listed. */
export const verdictInputs = memoize((all: Catalogue): string =>
  hashOf(
    all.cultivars.map(({ cultivar }) => cultivar),
    listedCultivars(all).map(({ cultivar }) => cultivar.id),
  ),
);

/** Changes with what the pages of places show: verdicts, whose dates are given first, and the lots that are ready somewhere. */
export const placeInputs = memoize((all: Catalogue): string =>
  hashOf(
    verdictInputs(all),
    guideInputs(all),
    readyLots(all)
      .map(({ entry }) => lotText(all, entry))
      .join('\n'),
  ),
);

/** Changes with what a page of a list shows: its rows, where everything else of the list stands, and `besides`. */
export function listInputs<T>(list: PagedList<T>, page: ListPage<T>, ...besides: unknown[]): string {
  return hashOf(list.contents, list.total, list.pages.length, page, ...besides);
}
