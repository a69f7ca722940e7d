/** What a visitor wants to see, and how that stands in the address. */

import {
  type SearchGroup,
  type SearchOrder,
  searchGroups,
  searchOrders,
} from '../../site/pages/search/searchTerms.ts';

export interface Wanted {
  text: string;
  /** Values chosen in each group; nothing chosen in a group leaves it open. */
  chosen: Record<SearchGroup, ReadonlySet<string>>;
  /** Null: the best match where there is a text, else the name. */
  order: SearchOrder | null;
}

function isOrder(word: string | null): word is SearchOrder {
  return (searchOrders as readonly (string | null)[]).includes(word);
}

/** Reads the query of an address. A group may be given as a list with commas or several times; unknown orders are left out. */
export function readWanted(query: string): Wanted {
  const asked = new URLSearchParams(query);
  const order = asked.get('sort');
  const chosen = searchGroups.map(group => {
    const values = asked.getAll(group).flatMap(part => part.split(','));
    return [group, new Set(values.filter(value => value !== ''))] as const;
  });
  return {
    text: (asked.get('q') ?? '').trim(),
    chosen: Object.fromEntries(chosen) as unknown as Wanted['chosen'],
    order: isOrder(order) ? order : null,
  };
}

/** The query of an address, `?q=jam&form=bare-root`; empty when nothing is asked. The same wish gives the same text. */
export function writeWanted({ text, chosen, order }: Wanted): string {
  const parts = [
    ...(text === '' ? [] : [['q', text] as const]),
    ...searchGroups
      .filter(group => chosen[group].size > 0)
      .map(group => [group, [...chosen[group]].sort().join(',')] as const),
    ...(order === null ? [] : [['sort', order] as const]),
  ];
  const written = parts.map(([key, value]) => `${key}=${encodeURIComponent(value).replaceAll('%2C', ',')}`);
  return written.length === 0 ? '' : `?${written.join('&')}`;
}

/** How many choices are made, the text not counted. */
export function choicesMade({ chosen }: Wanted): number {
  return searchGroups.reduce((sum, group) => sum + chosen[group].size, 0);
}

/** The order in which the results stand. */
export function orderOf({ text, order }: Pick<Wanted, 'text' | 'order'>): SearchOrder {
  if (order === null || (order === 'match' && text === '')) return text === '' ? 'name' : 'match';
  return order;
}
