/** The line at the top of a guide that leads to its version for the visitor's place. Without scripts it leads to the list of places. */

import { attribute, type Html, html } from '../../html.ts';
import { placeButton } from '../../parts/placeButton.ts';

export interface GuideLineOptions {
  /** The guide in general, or for a form and species. */
  path: string;
  /** The place the page is for; null on a page that is for none. */
  place: Parameters<typeof placeButton>[0] | null;
  /** Where the places of the guide are listed: a path, or a fragment of the page. */
  places: string;
}

/** A page with it needs the script by which guides follow the chosen place. */
export function guideLine({ path, place, places }: GuideLineOptions, href: (path: string) => string): Html {
  const list = places.startsWith('#') ? places : href(places);
  const asks =
    place === null
      ? html`With the dates of your place: <a href="${list}">choose it</a>.`
      : html`Not your place? <a href="${list}">Choose another</a>. ${placeButton(place)}`;
  return html`
    <p class="guide-line unprinted" data-guide-line="${path}"${attribute('data-place', place?.id ?? null)}>${asks}</p>
  `;
}
