/** Foot of every page. */

import type { Catalogue } from '../../core/catalogue.ts';
import { dayInWords } from '../../core/days.ts';
import { changesPath, climatesPath, howWeKnowPath, orderingPath } from '../addresses/paths.ts';
import { videosPath } from '../addresses/videoPaths.ts';
import { type Html, html } from '../html.ts';

export function foot(
  { yard, asOf, videos }: Pick<Catalogue, 'yard' | 'asOf' | 'videos'>,
  href: (path: string) => string,
): Html {
  const { email, phone, post } = yard.contact;
  return html`
    <footer class="foot">
      <div class="foot-rule">
        <p>
          ${post ?? yard.name}.
          ${email && html`<a href="mailto:${email}">${email}</a>`}
          ${phone && html`<span>${phone}</span>`}
        </p>
        <p>Computed on ${dayInWords(asOf)} from what had been seen in the yard by then.</p>
        <ul>
          <li><a href="${href(orderingPath)}">How to order</a></li>
          <li><a href="${href(changesPath)}">What changed</a></li>
          ${videos.length > 0 && html`<li><a href="${href(videosPath)}">Videos</a></li>`}
          <li><a href="${href(climatesPath)}">Kinds of climate</a></li>
          <li><a href="${href(howWeKnowPath)}">How we know</a></li>
          <li><a href="${href('/stock.json')}">Stock as data</a></li>
          <li><a href="${href('/cultivars.json')}">Cultivars as data</a></li>
          <li><a href="${href('/places.json')}">Places as data</a></li>
          <li><a href="${href('/notices.txt')}">Notices</a></li>
        </ul>
      </div>
    </footer>
  `;
}
