/** Running head of every page: the yard, the search box and the contents. */

import type { Catalogue } from '../../core/catalogue.ts';
import { dayInWords } from '../../core/days.ts';
import { guidesPath } from '../addresses/guidePaths.ts';
import {
  cultivarsPath,
  myPlacePath,
  orderingPath,
  placesPath,
  searchPath,
  stockPath,
} from '../addresses/paths.ts';
import { attribute, type Html, html } from '../html.ts';

const chapters = [
  { path: stockPath, name: 'Stock list' },
  { path: cultivarsPath, name: 'Cultivars' },
  { path: guidesPath, name: 'Guides' },
  { path: placesPath, name: 'Places' },
  { path: orderingPath, name: 'How to order' },
  { path: myPlacePath, name: 'Your place' },
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

/** `path` is that of the page; null for the page that stands in for missing ones. */
export function runningHead(
  { yard, asOf }: Pick<Catalogue, 'yard' | 'asOf'>,
  path: string | null,
  href: (path: string) => string,
): Html {
  const links = chapters.map(
    chapter => html`
      <li><a href="${href(chapter.path)}"${attribute('aria-current', current(chapter.path, path))}>${chapter.name}</a></li>
    `,
  );
  return html`
    <header class="head">
      <p class="yard"><a href="${href('/')}"><bdi>${yard.name}</bdi></a></p>
      ${path !== searchPath && searchBox(href)}
      <nav class="contents" aria-label="Contents">
        <ul>
          ${links}
          <li class="day">As of <time datetime="${asOf}">${dayInWords(asOf)}</time></li>
        </ul>
      </nav>
    </header>
  `;
}
