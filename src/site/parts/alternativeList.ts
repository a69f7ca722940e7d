/** What to look at instead of a cultivar. Those that stand by come forward when a visitor's place rules out some of the first. */

import { attribute, type Html, html } from '../html.ts';
import type { AlternativeRow } from './alternatives.ts';

/** Nothing where there are no alternatives. */
export function alternatives(
  rows: readonly AlternativeRow[],
  heading: string,
  href: (path: string) => string,
): Html {
  if (rows.length === 0) return html``;
  const items = rows.map(
    row =>
      html`
        <li data-cultivar="${row.id}"${attribute('hidden', !row.first)}>
          <p class="name"><a href="${href(row.path)}"><bdi>${row.name}</bdi></a> <span>${row.species}</span></p>
          <p><span class="state ${row.stock.state}">${row.stock.words}</span> <span class="mine" data-mine="${row.id}"></span></p>
          <p class="soft">${row.why}</p>
        </li>
      `,
  );
  return html`
    <section aria-labelledby="instead">
      <h2 id="instead">${heading}</h2>
      <p>The nearest by flavor and ripening of those on the list.</p>
      <ul class="instead" data-mine-alternatives>${items}</ul>
    </section>
  `;
}
