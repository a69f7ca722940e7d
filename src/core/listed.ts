/** Which cultivars belong in lists: those the yard raises, and those it no longer raises while a plant is left. */

import type { Catalogue, CultivarEntry } from './catalogue.ts';

/** Whether the yard has stopped raising a cultivar by the day of the catalogue. */
export function isRetired(
  { asOf }: Pick<Catalogue, 'asOf'>,
  { cultivar }: Pick<CultivarEntry, 'cultivar'>,
): boolean {
  return cultivar.retired !== null && cultivar.retired <= asOf;
}

/** Whether any lot of a cultivar has a plant left. */
export function hasStock({ lots }: Pick<CultivarEntry, 'lots'>): boolean {
  return lots.some(({ soldOut }) => !soldOut);
}

/** Cultivars for lists, tables, search and rankings, in the order of the catalogue. All others keep their page. */
export function listed(all: Pick<Catalogue, 'asOf' | 'cultivars'>): CultivarEntry[] {
  return all.cultivars.filter(entry => !isRetired(all, entry) || hasStock(entry));
}
