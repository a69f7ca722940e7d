/** Parts of a guide, at its top. */

import type { GuideHeading } from '../../../markdown/guideParts.ts';
import { type Html, html } from '../../html.ts';

/** `more` are the parts the page adds to the guide. */
export function guideJumps(
  headings: readonly GuideHeading[],
  more: readonly { id: string; text: string }[],
): Html {
  const parts = [...headings.filter(({ depth }) => depth === 2), ...more];
  const items = parts.map(({ id, text }) => html`<li><a href="#${id}">${text}</a></li>`);
  return html`
    <nav class="jumps" aria-labelledby="on-this-page">
      <h2 id="on-this-page">On this page</h2>
      <ul>${items}</ul>
    </nav>
  `;
}
