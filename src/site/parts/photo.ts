/** A photograph in several widths and formats, whole, on a few pixels of itself until it is there. */

import type { Photo } from '../../core/records/common.ts';
import { attribute, type Html, html } from '../html.ts';
import type { PageContext } from '../page.ts';
import { photoOnPage } from './photoOnPage.ts';

/** `first`: loads at once and before others, instead of when it comes into view. */
export async function photoFigure(
  { file, alt }: Photo,
  { links: { href }, photo }: PageContext,
  first = false,
): Promise<Html> {
  const published = await photo(file);
  const { width, height, sizes } = photoOnPage(published);
  const set = (variants: readonly { path: string; width: number }[]) =>
    variants.map(variant => `${href(variant.path)} ${variant.width}w`).join(', ');
  const sources = published.sources.map(
    ({ type, variants }) => html`<source type="${type}" srcset="${set(variants)}" sizes="${sizes}">`,
  );
  const loading = first ? 'eager' : 'lazy';
  const priority = attribute('fetchpriority', first && 'high');
  return html`
    <figure class="photo">
      <img class="placeholder" src="${published.placeholder}" alt="" width="${width}" height="${height}"><picture>
        ${sources}
        <img src="${href(published.fallback)}" alt="${alt}" width="${width}" height="${height}" loading="${loading}"${priority} decoding="async">
      </picture>
    </figure>
  `;
}
