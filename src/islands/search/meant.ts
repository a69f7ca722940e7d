/** What the words of a search find, once it is understood what they mean. */

import type { RowsFile } from '../../site/data/searchRows.ts';
import type { WhereFile } from '../../site/data/where.ts';
import { fetchJson } from '../myPlace/answers.ts';
import { choiceFor } from '../myPlace/near.ts';
import type { Matches } from './narrow.ts';
import type { NamedPage } from './results.ts';
import type { Understood } from './understood.ts';
import type { WordIndex } from './wordIndex.ts';

/** What the words find; null: there are none to look for. A lot leads to its cultivar, a ZIP code to no tree. */
export async function matchesOf(
  { words, named, zip }: Understood,
  file: Pick<RowsFile, 'trees'>,
  wordIndex: () => Promise<WordIndex>,
): Promise<Matches> {
  const lots = new Set(named.filter(({ kind }) => kind === 'Lot').map(({ title }) => title.slice(4)));
  if (lots.size > 0) {
    const having = file.trees.flatMap(({ lots: own }, at) =>
      own.some(id => lots.has(id)) ? [[at, 0] as const] : [],
    );
    return new Map(having);
  }
  if (zip !== null) return new Map();
  return words === '' ? null : (await wordIndex())(words);
}

/** Lots and places that the words name; of a ZIP code, the place nearest to it. */
export async function namedPages({ named, zip }: Understood): Promise<NamedPage[]> {
  if (zip === null) return named;
  const where = await fetchJson<WhereFile>('/my-place/where.json');
  const found = choiceFor(where, zip);
  if (!found.ok) return [];
  const { place, name, found: how } = found.choice;
  return [
    { kind: 'Place', path: `/places/${place}/`, title: name, summary: `What does well there: ${how}.` },
  ];
}
