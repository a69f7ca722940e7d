/** Running head of every page: the yard, the visitor's place, the search box and the contents. */

import type { Catalogue } from '../../core/catalogue.ts';
import { guidesPath } from '../addresses/guidePaths.ts';
import { cultivarsPath, orderingPath, placesPath, searchPath, stockPath } from '../addresses/paths.ts';
import { attribute, type Html, html } from '../html.ts';
import { placeInHead } from './placeInHead.ts';

/** On a phone the last two change places with each other: there is no room for the box, and how to order stands in the foot too. */
const chapters = [
  { path: stockPath, name: 'Stock list', only: null },
  { path: cultivarsPath, name: 'Cultivars', only: null },
  { path: guidesPath, name: 'Guides', only: null },
  { path: placesPath, name: 'Places', only: null },
  { path: orderingPath, name: 'How to order', only: 'wide-only' },
  { path: searchPath, name: 'Search', only: 'phone-only' },
];

/** How `aria-current` names a chapter for the reader of a page; null for another chapter's. */
function current(chapter: string, path: string | null): string | null {
  if (path === chapter) return 'page';
  return path?.startsWith(chapter) ? 'true' : null;
}

/** The page with the results has a larger search box of its own. */
const searchBox = (href: (path: string) => string): Html => html`
  <search class="seek">
    <form action="${href(searchPath)}" method="get">
      <label class="unseen" for="seek">Search cultivars, lots and guides</label>
      <input id="seek" type="search" name="q" autocomplete="off" placeholder="Cultivar, flavor or lot">
      <button type="submit">Search</button>
    </form>
  </search>
`;

/** `path` is that of the page; null for the page that stands in for missing ones. A page for the grower has no visitor's place. */
export function runningHead(
  { yard }: Pick<Catalogue, 'yard'>,
  path: string | null,
  href: (path: string) => string,
  forVisitors = true,
): Html {
  const links = chapters.map(
    ({ path: to, name, only }) => html`
      <li${attribute('class', only)}><a href="${href(to)}"${attribute('aria-current', current(to, path))}>${name}</a></li>
    `,
  );
  return html`
    <header class="head">
      <p class="yard"><a href="${href('/')}"><bdi>${yard.name}</bdi></a></p>
      ${path !== searchPath && searchBox(href)}
      <nav class="contents" aria-label="Contents">
        <ul>${links}</ul>
      </nav>
      ${forVisitors && placeInHead(href)}
    </header>
  `;
}
