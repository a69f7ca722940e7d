/** How trees leave just now, at the top of every page that offers some; the words of a chosen place take the place of the yard's own. */

import type { Catalogue } from '../../core/catalogue.ts';
import { type Html, html } from '../html.ts';
import { memoize } from '../memo.ts';
import { seasonWords } from '../words/sendingWords.ts';
import { sentNow } from './sentNow.ts';

export const seasonNotice = memoize((all: Pick<Catalogue, 'home' | 'yard' | 'asOf'>): Html => {
  const { lead, rest } = seasonWords(sentNow(all), all.asOf);
  return html`<p class="season" data-season><strong>${lead}</strong> ${rest}</p>`;
});
