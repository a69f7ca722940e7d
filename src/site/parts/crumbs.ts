/** The way back up. */

import type { SiteLinks } from '../../outputs/siteLinks.ts';
import { breadcrumbs } from '../../outputs/structuredData.ts';
import { type Html, html } from '../html.ts';
import { structuredData } from './structuredData.ts';

export interface Crumb {
  path: string;
  name: string;
}

/** `above` are the pages above this one, from the top; `here` is its own name, for programs that follow the trail. */
export function crumbs(above: Crumb[], here: string, { href, absolute }: SiteLinks): Html {
  const items = above.map(({ path, name }) => html`<li><a href="${href(path)}"><bdi>${name}</bdi></a></li>`);
  return html`
    <nav class="crumbs" aria-label="You are here">
      <ol>${items}</ol>
    </nav>
    ${structuredData([breadcrumbs(above, here, absolute)])}
  `;
}
