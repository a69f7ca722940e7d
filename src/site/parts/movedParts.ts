/** Parts that were on this page and are on another now: a link of before leads to the line that names where. */

import type { OldNames } from '../../core/addresses/earlierParts.ts';
import type { SiteLinks } from '../../outputs/siteLinks.ts';
import { type Html, html } from '../html.ts';

export function movedPartLines(parts: OldNames['elsewhere'], { href, absolute }: SiteLinks): Html[] {
  return parts.map(
    ({ name, to }) => html`
      <p id="${name}" class="unprinted">
        What was here before is now at <a href="${href(to)}">${absolute(to)}</a>.
      </p>
    `,
  );
}
