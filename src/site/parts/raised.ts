/** Cultivars for lists, and what is said of those that are no longer raised. */

import type { Catalogue, CultivarEntry } from '../../core/catalogue.ts';
import { dayInWords } from '../../core/days.ts';
import { hasStock, isRetired, listed } from '../../core/listed.ts';
import { memoize } from '../memo.ts';

/** Cultivars for lists, tables, search and rankings, worked out once. */
export const listedCultivars = memoize((all: Catalogue): CultivarEntry[] => listed(all));

/** What the page of a cultivar that is no longer raised says first; null for any other. */
export function retiredInWords(all: Pick<Catalogue, 'asOf'>, entry: CultivarEntry): string | null {
  if (!isRetired(all, entry)) return null;
  return `We stopped raising it on ${dayInWords(entry.cultivar.retired!)}; ${hasStock(entry) ? 'what is on the list is the last of it.' : 'none is left.'}`;
}
