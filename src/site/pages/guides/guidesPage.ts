/** The care guides. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { guidesPath } from '../../addresses/guidePaths.ts';
import { placesPath } from '../../addresses/paths.ts';
import { videosPath } from '../../addresses/videoPaths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { countInWords } from '../../words/words.ts';
import { guideLines } from './guideList.ts';
import { guideLinks } from './links.ts';

function guideList(all: Catalogue, href: (path: string) => string): Html {
  const places = html`<a href="${href(placesPath)}">${countInWords(all.places.length, 'place')}</a>`;
  const videos = html`<p>Some of this work is shown in <a href="${href(videosPath)}">our videos</a>.</p>`;
  return html`
    <p>
      Each guide can be read in general, or with the dates of one of ${places}. A guide for a place has a calendar you can add to
      your own, and prints on one sheet to fold.
    </p>
    ${guideLinks(guideLines(all), href)}
    ${all.videos.length > 0 && videos}
  `;
}

export function guidesPage(all: Catalogue, { links: { href } }: PageContext): Page {
  const none = all.guides.length === 0;
  return {
    title: 'Care guides',
    description: `How to care for a tree from ${all.yard.name}, from the day it arrives through its first winters, with dates for ${countInWords(all.places.length, 'place')}.`,
    path: guidesPath,
    main: html`
      <h1>Care guides</h1>
      <p class="standfirst">What to do with a tree, from the day it arrives through its first two winters.</p>
      ${none ? html`<p>No guide has been written yet.</p>` : guideList(all, href)}
    `,
  };
}
