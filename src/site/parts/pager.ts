/** The way to the other pages of a long list. */

import { type Html, html } from '../html.ts';
import { pagePath } from './paging.ts';

interface Pages {
  /** Address of the first page. */
  path: string;
  number: number;
  count: number;
  /** What the pages belong to, for people who cannot see the layout. */
  name: string;
}

/** Nothing when there is one page. */
export function pager({ path, number, count, name }: Pages, href: (path: string) => string): Html | null {
  if (count <= 1) return null;
  const items = Array.from({ length: count }, (_, index) => {
    const other = index + 1;
    const words = html`<span class="unseen">Page</span> ${other}`;
    return other === number
      ? html`<li><span aria-current="page">${words}</span></li>`
      : html`<li><a href="${href(pagePath(path, other))}">${words}</a></li>`;
  });
  return html`
    <nav class="pager" aria-label="Pages of the ${name}">
      <ul>${items}</ul>
    </nav>
  `;
}
