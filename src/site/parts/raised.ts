/** Which cultivars belong in lists: those the yard raises, and those it no longer raises while a plant is left. */

import type { Catalogue, CultivarEntry } from '../../core/catalogue.ts';
import { dayInWords } from '../../core/days.ts';
import { oncePer } from '../memo.ts';

/** Whether the yard has stopped raising a cultivar by the day of the catalogue. */
function isRetired(
  { asOf }: Pick<Catalogue, 'asOf'>,
  { cultivar }: Pick<CultivarEntry, 'cultivar'>,
): boolean {
  return cultivar.retired !== null && cultivar.retired <= asOf;
}

/** Cultivars for lists, tables, search and rankings, in the order of the catalogue. All others keep their page. */
export const listedCultivars = oncePer((all: Catalogue): CultivarEntry[] =>
  all.cultivars.filter(entry => !isRetired(all, entry) || entry.lots.some(({ soldOut }) => !soldOut)),
);

/** What the page of a cultivar that is no longer raised says first; null for any other. */
export function retiredInWords(all: Pick<Catalogue, 'asOf'>, entry: CultivarEntry): string | null {
  if (!isRetired(all, entry)) return null;
  const left = entry.lots.some(({ soldOut }) => !soldOut);
  return `We stopped raising it on ${dayInWords(entry.cultivar.retired!)}; ${left ? 'what is on the list is the last of it.' : 'none is left.'}`;
}
