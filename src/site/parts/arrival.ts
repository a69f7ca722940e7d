/** Straight to what to do on the day a tree arrives, for its form. */

import type { Catalogue } from '../../core/catalogue.ts';
import type { Form } from '../../core/records/common.ts';
import { arrivalPath } from '../addresses/guidePaths.ts';
import { type Html, html } from '../html.ts';
import { memoize } from '../memo.ts';
import { arrivalGuide } from '../pages/guides/guideSubject.ts';
import { formWords, lowerFirst } from '../words/words.ts';

function line(all: Catalogue, species: string, forms: readonly Form[], href: (path: string) => string): Html {
  const links = forms.flatMap(form => {
    const guide = arrivalGuide(all, form, species);
    return guide === null
      ? []
      : [html`<a href="${href(arrivalPath(guide.id, form, species))}">${lowerFirst(formWords[form])}</a>`];
  });
  if (links.length === 0) return html``;
  return html`<p class="arrives">When it arrives: ${links.map((link, index) => (index > 0 ? html`, ${link}` : link))}.</p>`;
}

const lines = memoize((_: (path: string) => string) => memoize((_: Catalogue) => new Map<string, Html>()));

/** Nothing where no guide speaks of arrival. Written once for each species and its forms. */
export function whenItArrives(
  all: Catalogue,
  species: string,
  forms: readonly Form[],
  href: (path: string) => string,
): Html {
  const kept = lines(href)(all);
  const key = `${species} ${forms}`;
  const written = kept.get(key) ?? line(all, species, forms, href);
  kept.set(key, written);
  return written;
}
