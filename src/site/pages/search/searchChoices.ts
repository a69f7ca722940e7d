/** What can be chosen on the search page, with how many cultivars each choice leaves by itself. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { searchRows } from '../../data/searchRows.ts';
import { fits, type SearchGroup, type SearchOrder, searchGroups } from './searchTerms.ts';

export const groupWords: Record<SearchGroup, string> = {
  species: 'Kind of tree',
  flavor: 'Flavor',
  ripening: 'Ripens',
  form: 'Form',
  readiness: 'Readiness',
  price: 'Price of one, at most',
  scarcity: 'Elsewhere',
  size: 'Graded as',
  place: 'At your place',
};

export const orderWords: Record<SearchOrder, string> = {
  match: 'Best match',
  name: 'Name',
  price: 'Price, lowest first',
  readiness: 'Readiness, soonest first',
  ripening: 'Ripening, earliest first',
};

export interface ShownChoice {
  value: string;
  words: string;
  /** Null where it depends on the visitor. */
  count: number | null;
}

/** Every group with its choices, in the order of the page. */
export function searchChoices(all: Catalogue): { group: SearchGroup; choices: ShownChoice[] }[] {
  const { trees, offers, choices } = searchRows(all);
  const valuesOf = (group: SearchGroup, tree: (typeof trees)[number]): (string | null)[] => {
    if (group === 'place') return [];
    if (group === 'species' || group === 'flavor' || group === 'ripening' || group === 'scarcity')
      return [tree[group]];
    return tree.offers.map(index => offers[index]![group]);
  };
  return searchGroups.map(group => ({
    group,
    choices: choices[group].map(([value, words]) => ({
      value,
      words,
      count:
        group === 'place'
          ? null
          : trees.filter(tree => valuesOf(group, tree).some(own => own !== null && fits(group, own, value)))
              .length,
    })),
  }));
}
