/**
 * What pages show beyond the ground they all rest on, as hashes: a page whose hash is that of before is not rendered again. Pages of a cultivar and its
 * lots show each other, so they change together.
 */

import type { Catalogue, CultivarEntry, LotEntry } from '../core/catalogue.ts';
import { hashOf } from '../pageReuse.ts';
import { cultivarPath, lotPath } from '../site/addresses/paths.ts';
import { oncePer } from '../site/memo.ts';
import { readyLots } from '../site/pages/places/placeTrees.ts';
import { alternativeRows } from '../site/parts/alternatives.ts';
import type { ListPage, PagedList } from '../site/parts/paging.ts';
import { listedCultivars } from '../site/parts/raised.ts';
import type { PrintedFile } from './printed.ts';

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

/** Changes with what verdicts, rankings and seasons hang on: the traits of every cultivar, and which of them are listed. */
export const shownOfVerdicts = oncePer((all: Catalogue): string =>
  hashOf(
    all.cultivars.map(({ cultivar }) => cultivar),
    listedCultivars(all).map(({ cultivar }) => cultivar.id),
  ),
);

/** Changes with what the pages of places show: verdicts, whose dates are given first, and the lots that are ready somewhere. */
export const shownOfPlaces = oncePer((all: Catalogue): string =>
  hashOf(
    shownOfVerdicts(all),
    shownOfGuides(all),
    readyLots(all)
      .map(({ entry }) => ownAnswers(all, entry))
      .join('\n'),
  ),
);

/** Changes with what a page of a list shows: its rows, where everything else of the list stands, and `besides`. */
export function shownOfList<T>(list: PagedList<T>, page: ListPage<T>, ...besides: unknown[]): string {
  return hashOf(list.contents, list.total, list.pages.length, page, ...besides);
}

/** Changes with what a file shows that can be printed. */
export function shownOfPrinted(all: Catalogue, job: PrintedFile): string {
  return 'at' in job ? shownOfGuides(all) : shownOfCultivar(all, job.entry);
}
