/** The pages of the cultivar list, by species: of all, and of those that share a flavor or a time of ripening. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { listOfPages } from '../../../outputs/structuredData.ts';
import { comparePath, cultivarsPath } from '../../addresses/paths.ts';
import { attribute, type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { compareForm } from '../../parts/compareForm.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { groupHeading } from '../../parts/groupHeading.ts';
import { myPlaceLine } from '../../parts/myTree.ts';
import { pager } from '../../parts/pager.ts';
import { type ListPage, type PagedList, pagePath, pageTitle } from '../../parts/paging.ts';
import { countInWords, sentence } from '../../words/words.ts';
import { type CultivarRow, cultivarList, flavorLists, ripeningLists, type TraitList } from './cultivar.ts';
import { cultivarTable } from './cultivarTable.ts';

type Href = (path: string) => string;

/** One page of a list of cultivars. */
interface Shown {
  list: PagedList<CultivarRow>;
  page: ListPage<CultivarRow>;
  /** Address of the first page. */
  path: string;
}

function speciesLinks({ list, page, path }: Shown, href: Href): Html | null {
  if (list.contents.length <= 1) return null;
  const links = list.contents.map(({ id, heading, count, page: at }) => {
    const link = at === page.number ? `#${id}` : `${href(pagePath(path, at))}#${id}`;
    return html`<li><a href="${link}">${heading} (${count})</a></li>`;
  });
  return html`
    <h2>By species</h2>
    <ul>${links}</ul>
  `;
}

function traitLinks(heading: string, lists: readonly TraitList[], path: string, href: Href): Html {
  const links = lists.map(
    ({ path: other, name, list: { total } }) => html`
      <li><a href="${href(other)}"${attribute('aria-current', other === path && 'true')}>${name} (${total})</a></li>
    `,
  );
  const isOneOfThese = lists.some(other => other.path === path);
  return html`
    <h2>${heading}</h2>
    <ul>
      ${links}
      ${isOneOfThese && html`<li><a href="${href(cultivarsPath)}">All</a></li>`}
    </ul>
  `;
}

/** The other lists, groups of cultivars and the way to the other pages. */
function cultivarGroups(all: Catalogue, shown: Shown, href: Href): Html {
  const { list, page, path } = shown;
  const groups = page.groups.map(
    group => html`
      <section aria-labelledby="${group.id}">
        ${groupHeading(group, 'cultivar')}
        ${cultivarTable(`Cultivars: ${group.heading}`, group.rows, href)}
      </section>
    `,
  );
  return html`
    <nav class="jumps" aria-label="Parts of the list">
      ${speciesLinks(shown, href)}
      ${traitLinks('By flavor', flavorLists(all), path, href)}
      ${traitLinks('By ripening', ripeningLists(all), path, href)}
    </nav>
    ${myPlaceLine('How each cultivar does where you are', href)}
    ${list.total === 0 && html`<p>No cultivar is on this list today.</p>`}
    ${list.total > 0 && compareForm(html`${groups}`, href)}
    ${pager({ path, number: page.number, count: list.pages.length, name: 'list' }, href)}
  `;
}

/** A page of the whole list. */
export function cultivarListPage(
  all: Catalogue,
  page: ListPage<CultivarRow>,
  { links: { href, absolute } }: PageContext,
): Page {
  const list = cultivarList(all);
  const title = pageTitle('Cultivars', page.number);
  const cultivars = sentence(countInWords(list.total, 'cultivar'));
  const standfirst = html`
    <p class="standfirst">
      ${cultivars}, sold out or not. <a href="${href(comparePath)}">Compare them side by side</a>
    </p>
  `;
  return {
    title,
    description: `${cultivars} of ${all.yard.name}, with flavor, ripening, fruit and pollination side by side.`,
    path: pagePath(cultivarsPath, page.number),
    things: [
      listOfPages(
        page.groups.flatMap(({ rows }) => rows),
        absolute,
      ),
    ],
    main: html`
      <h1>${title}</h1>
      ${page.number === 1 && standfirst}
      ${cultivarGroups(all, { list, page, path: cultivarsPath }, href)}
    `,
  };
}

/** A page of the cultivars that share a trait. */
export function traitListPage(
  all: Catalogue,
  { list, path, heading, means }: TraitList,
  page: ListPage<CultivarRow>,
  { links }: PageContext,
): Page {
  const title = pageTitle(heading, page.number);
  const cultivars = sentence(countInWords(list.total, 'cultivar'));
  return {
    title,
    description: `${cultivars} of ${all.yard.name}: ${heading.toLowerCase()}, with fruit, crops and pollination side by side.`,
    path: pagePath(path, page.number),
    main: html`
      ${crumbs([{ path: cultivarsPath, name: 'Cultivars' }], title, links)}
      <h1>${title}</h1>
      <p class="standfirst">${[means, cultivars].filter(words => words !== '').join('. ')}.</p>
      ${cultivarGroups(all, { list, page, path }, links.href)}
    `,
  };
}
