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
    <details class="on-this-page unprinted">
      <summary>On this page</summary>
      <nav aria-label="On this page"><ul>${items}</ul></nav>
    </details>
  `;
}
