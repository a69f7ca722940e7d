/** What to do when nothing fits: which choice stands in the way, which name may have been meant, where the plain lists are. */

import type { RowsFile } from '../../site/data/searchRows.ts';
import type { SearchGroup } from '../../site/pages/search/searchTerms.ts';
import { type LevelOf, type Matches, narrow, wouldHelp } from './narrow.ts';

import { link, make } from './results.ts';
import { nearNames } from './understood.ts';
import { choicesMade, type Wanted } from './wanted.ts';

export interface Nothing {
  file: RowsFile;
  wanted: Wanted;
  /** Of what was typed, the words that were looked for. */
  words: string;
  matches: Matches;
  levelOf: LevelOf;
  legendOf: (group: SearchGroup) => string;
  retry: (next: Wanted) => void;
  without: (group: SearchGroup, values: Iterable<string>) => Wanted;
}

function offer(words: string, then: () => void): HTMLLIElement {
  const button = make('button', '', words);
  button.type = 'button';
  button.onclick = then;
  return make('li', '', button);
}

function fewer({ file, wanted, matches, levelOf, legendOf, retry, without }: Nothing): HTMLElement[] {
  const { text, chosen } = wanted;
  const items = wouldHelp(file, chosen, matches, levelOf).map(({ group, count }) =>
    offer(`Without “${legendOf(group)}”: ${count}`, () => retry(without(group, chosen[group]))),
  );
  if (text !== '' && choicesMade(wanted) > 0) {
    const count = narrow(file, chosen, null, levelOf).hits.length;
    if (count > 0) {
      items.push(offer(`Without the words “${text}”: ${count}`, () => retry({ ...wanted, text: '' })));
    }
  }
  return items;
}

/** A part of the page that leads on. */
export function nothingFound(nothing: Nothing): HTMLElement {
  const { file, wanted, words, retry } = nothing;
  const items = fewer(nothing);
  const names = words === '' ? [] : nearNames(words, file);
  const shown: (Node | string)[] = [make('h2', '', 'Nothing fits all of that')];
  if (items.length > 0) {
    shown.push(make('p', '', 'One choice less would leave:'), make('ul', 'buttons fewer', ...items));
  }
  if (names.length > 0) {
    const near = names.map(({ title, path }) =>
      path === null
        ? offer(title, () => retry({ ...wanted, text: title }))
        : make('li', '', link(path, title)),
    );
    shown.push(make('p', '', 'Names near to what you typed:'), make('ul', 'columns', ...near));
  }
  shown.push(make('p', '', 'The plain lists below have everything.'));
  return make('section', 'nothing', ...shown);
}
