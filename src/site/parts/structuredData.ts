/** What a page says to programs that read schema.org. Data, not script: nothing of it runs, so the content policy has no say in it. */

import { type PageThing, structuredText } from '../../outputs/structuredData.ts';
import { type Html, html, safeHtml } from '../html.ts';

/** Nothing where there is nothing to say. */
export function structuredData(things: readonly (PageThing | null)[]): Html {
  const told = things.filter(thing => thing !== null);
  if (told.length === 0) return html``;
  return html`<script type="application/ld+json">${safeHtml(structuredText(told))}</script>`;
}
