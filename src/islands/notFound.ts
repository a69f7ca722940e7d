/** On the page that stands in for missing ones: lots and names near to the address that was asked for. */

import { href } from '../href.ts';
import type { RowsFile } from '../site/data/searchRows.ts';
import { fetchJson } from './myPlace/answers.ts';
import { link, make } from './search/results.ts';
import { lotsNear, nearNames } from './search/understood.ts';

/** The last part of the address that says something, with spaces for hyphens. */
function asked(): string {
  const parts = location.pathname.slice(href('/').length).split('/');
  const last = parts.findLast(part => /[a-z\d]/i.test(part)) ?? '';
  try {
    return decodeURIComponent(last).replace(/\.html?$/, '');
  } catch {
    return last;
  }
}

const near = document.querySelector<HTMLElement>('[data-near]');
const words = asked();
if (near && words !== '') {
  const box = document.querySelector<HTMLInputElement>('#seek-page');
  if (box) box.value = words.replaceAll('-', ' ');
  try {
    const file = await fetchJson<RowsFile>('/search/rows.json');
    const found = [...lotsNear(words, file), ...nearNames(words.replaceAll('-', ' '), file)];
    const pages = found.flatMap(({ title, path }) =>
      path === null ? [] : [make('li', '', link(path, title))],
    );
    near.querySelector('ul')?.replaceChildren(...pages);
    near.hidden = pages.length === 0;
  } catch {
    // The lists below stand.
  }
}
