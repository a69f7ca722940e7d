/** Guides with a line on each. */

import { type Html, html } from '../../html.ts';
import type { GuideLine } from './guideList.ts';

export function guideLinks(lines: readonly GuideLine[], href: (path: string) => string): Html {
  const items = lines.map(
    ({ path, title, summary }) => html`
      <li>
        <a href="${href(path)}">${title}</a>
        <p>${summary}</p>
      </li>
    `,
  );
  return html`<ul class="found">${items}</ul>`;
}
