/** Results as parts of the page. A row looks like a row of the cultivar list. */

import { href } from '../../href.ts';
import type { PageRow } from '../../site/data/searchRecords.ts';
import type { TreeRow } from '../../site/data/searchRows.ts';
import type { Hit } from './narrow.ts';

/** Words of a value that can be chosen. */
export type WordsOf = (group: 'species' | 'flavor' | 'ripening' | 'price', value: string) => string;

export interface Said {
  level: string;
  words: string;
}

export function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  className: string,
  ...content: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  if (className !== '') made.className = className;
  made.append(...content);
  return made;
}

export function link(path: string, words: string): HTMLAnchorElement {
  const made = make('a', '', make('bdi', '', words));
  made.href = href(path);
  return made;
}

const svgSpace = 'http://www.w3.org/2000/svg';

function plate({ symbol, colors, width, height }: TreeRow['mark']): SVGElement {
  const drawn = document.createElementNS(svgSpace, 'svg');
  drawn.setAttribute('class', `fruit ${colors}`);
  drawn.setAttribute('width', String(width));
  drawn.setAttribute('height', String(height));
  drawn.setAttribute('aria-hidden', 'true');
  const use = document.createElementNS(svgSpace, 'use');
  use.setAttribute('href', `${href('/plates.svg')}#${symbol}`);
  drawn.append(use);
  return drawn;
}

function cell(className: string, ...content: (Node | string)[]): HTMLTableCellElement {
  return make('td', className, ...content);
}

function treeRow({ row, price }: Hit, wordsOf: WordsOf, said: Said | null): HTMLTableRowElement {
  const name = make(
    'th',
    'name',
    plate(row.mark),
    link(`/cultivars/${row.id}/`, row.name),
    make('span', '', wordsOf('species', row.species)),
  );
  name.scope = 'row';
  const mine = make('span', said === null ? 'mine' : `mine level ${said.level}`, said?.words ?? '');
  mine.dataset.mine = row.id;
  const ripens = cell(`ripens ${row.ripening}`, wordsOf('ripening', row.ripening).toLowerCase(), mine);
  ripens.dataset.head = 'ripens';
  return make(
    'tr',
    '',
    name,
    cell('flavor', wordsOf('flavor', row.flavor)),
    ripens,
    cell('size', `${row.fruit} `, make('span', '', row.size)),
    cell('when', make('span', `state ${row.stock.state}`, row.stock.words)),
    cell('price', price === null ? '–' : `from ${wordsOf('price', String(price))}`),
  );
}

const heads = ['Cultivar', 'Flavor', 'Ripens', 'Fruit', 'Stock', 'Price'];

export function treeTable(): HTMLTableElement {
  const row = make('tr', '');
  for (const words of heads) {
    const head = make('th', words === 'Price' ? 'price' : '', words);
    head.scope = 'col';
    row.append(head);
  }
  return make(
    'table',
    'traits folds sought',
    make('caption', '', 'Cultivars'),
    make('thead', '', row),
    make('tbody', ''),
  );
}

/** Adds rows to a table; returns the link of the first of them. */
export function addTrees(
  table: HTMLTableElement,
  hits: readonly Hit[],
  wordsOf: WordsOf,
  saidOf: (cultivar: string) => Said | null,
): HTMLElement | null {
  const rows = hits.map(hit => treeRow(hit, wordsOf, saidOf(hit.row.id)));
  table.tBodies[0]!.append(...rows);
  return rows[0]?.querySelector('a') ?? null;
}

/** A page that the words name, and what it is. */
export type NamedPage = PageRow & { kind: 'Lot' | 'Place' };

function found({ path, title, summary }: PageRow, kind: string): HTMLLIElement {
  return make('li', '', make('span', 'kind', kind), ' ', link(path, title), make('p', '', summary));
}

/** Lots and places that are named. */
export function namedList(pages: readonly NamedPage[]): HTMLElement {
  const list = make('ul', 'found', ...pages.map(page => found(page, page.kind)));
  list.setAttribute('aria-label', 'Lots and places');
  return list;
}

/** Guides and videos that have the words. */
export function pageList(pages: readonly PageRow[]): HTMLElement {
  const items = pages.map(page => found(page, page.path.startsWith('/videos/') ? 'Video' : 'Guide'));
  const heading = make('h2', '', 'Guides and videos');
  heading.id = 'found-pages';
  const section = make('section', '', heading, make('ul', 'found', ...items));
  section.setAttribute('aria-labelledby', heading.id);
  return section;
}
