/** Compare: up to four cultivars of one's own choice with scripts; whole species and flavor classes as tables without. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { comparePath } from '../../addresses/paths.ts';
import { seasonGrid } from '../../drawing/seasonBarFigure.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { pager } from '../../parts/pager.ts';
import { groupBy, type ListPage, pagePath, pageTitle } from '../../parts/paging.ts';
import { cultivarList } from '../cultivars/cultivar.ts';
import {
  axisInWords,
  COMPARED_AT_MOST,
  type ComparedRow,
  type CompareList,
  compareLists,
} from './compare.ts';
import { compareTable } from './compareTable.ts';

type Href = (path: string) => string;

/** Every listed cultivar to choose from, by species. Shown by the script, which nothing can be chosen without. */
function choiceForm(all: Catalogue, href: Href): Html {
  const groups = groupBy(
    cultivarList(all).pages.flatMap(page => page.groups),
    ({ heading }) => heading,
  );
  const choices = [...groups].map(([heading, parts]) => {
    const rows = parts.flatMap(part => part.rows);
    const options = rows.map(row => html`<option value="${row.id}">${row.name}</option>`);
    return html`<optgroup label="${heading}">${options}</optgroup>`;
  });
  return html`
    <form data-compare="${href(comparePath)}" data-most="${COMPARED_AT_MOST}" hidden>
      <label for="pick">Cultivar</label>
      <select id="pick" name="c">${choices}</select>
      <button type="submit">Add</button>
      <label class="only"><input type="checkbox" data-compare-only> Only differences</label>
    </form>
  `;
}

function tableLinks(id: string, heading: string, lists: readonly CompareList[], href: Href): Html {
  const items = lists.map(
    ({ path, heading: name, list: { total } }) =>
      html`<li><a href="${href(path)}">${name}</a> <span>${total}</span></li>`,
  );
  return html`
    <section aria-labelledby="${id}">
      <h2 id="${id}">${heading}</h2>
      <ul class="leaders">${items}</ul>
    </section>
  `;
}

export function comparePage(all: Catalogue, { links: { href } }: PageContext): Page {
  const { home, yard } = all;
  const lists = compareLists(all);
  return {
    title: 'Compare',
    description: `Compare cultivars of ${yard.name}: fruits to one scale, seasons on one axis, and what differs.`,
    path: comparePath,
    scripts: ['compare'],
    styles: ['compare'],
    main: html`
      <h1>Compare</h1>
      <div class="pick">
        <noscript>
          <p class="notice">
            Scripts are off in this browser, so what you checked in a list cannot be put side by side here. Open a table below, check the cultivars
            there, and show only those.
          </p>
        </noscript>
        ${choiceForm(all, href)}
        <p role="status" data-compare-status></p>
      </div>
      ${seasonGrid(all.climates.get(home.id)!, home.lat)}
      <div data-compare-table data-place="${home.name}" data-year="${axisInWords(home.lat)}"></div>
      <div class="halves">
        ${tableLinks('species', 'Whole species', lists.species, href)}
        ${tableLinks('flavors', 'One flavor', lists.flavor, href)}
      </div>
    `,
  };
}

/** A page of the cultivars of one species or flavor class; `here` is the yard's own place. */
export function compareListPage(
  all: Catalogue,
  { kind, path, heading, list }: CompareList,
  page: ListPage<ComparedRow>,
  here: PlaceAnswers,
  { links }: PageContext,
): Page {
  const title = pageTitle(`${heading}, compared`, page.number);
  const rows = page.groups.flatMap(group => group.rows);
  return {
    title,
    description: `${heading}: the cultivars of ${all.yard.name} side by side, fruits to one scale, seasons on one axis.`,
    path: pagePath(path, page.number),
    styles: ['compare'],
    main: html`
      ${crumbs([{ path: comparePath, name: 'Compare' }], title, links)}
      <h1>${title}</h1>
      ${compareTable(all, here, { kind, caption: heading, rows }, links.href)}
      ${pager({ path, number: page.number, count: list.pages.length, name: 'table' }, links.href)}
    `,
  };
}
