/** Shown for an address that leads nowhere. */

import { cultivarsPath, searchPath, stockPath } from '../../addresses/paths.ts';
import { html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';

export function notFoundPage({ links: { href } }: PageContext): Page {
  return {
    title: 'Not found',
    description: 'There is no page at this address.',
    path: null,
    unlisted: true,
    scripts: ['notFound'],
    main: html`
      <h1>There is no page here</h1>
      <p>
        The address may have been misspelled. Lots keep their page after they are sold, so what you look for is likely still in the lists.
      </p>
      <form class="seek-page" method="get" action="${href(searchPath)}">
        <label class="unseen" for="seek-page">Search cultivars, lots, guides and places</label>
        <input id="seek-page" type="search" name="q" placeholder="Cultivar, lot or town">
        <button type="submit">Search</button>
      </form>
      <div data-near hidden>
        <h2>Did you look for one of these?</h2>
        <ul class="columns"></ul>
      </div>
      <ul class="columns">
        <li><a href="${href(stockPath)}">Stock list</a></li>
        <li><a href="${href(cultivarsPath)}">Cultivars</a></li>
        <li><a href="${href(searchPath)}">Search</a></li>
      </ul>
    `,
  };
}
