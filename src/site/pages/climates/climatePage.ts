/** A kind of climate: its places, and which cultivars do well in them. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { Outlooks } from '../../../outlooks.ts';
import { climatesPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { factList } from '../../parts/facts.ts';
import { levelMark, levelWordsHtml } from '../../parts/level.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { classMeanings } from '../../words/placeClasses.ts';
import { countInWords, sentence } from '../../words/words.ts';
import { type KindCultivar, kindCultivars, kindPlaces, likeKinds, type ShownKind } from './climates.ts';

type Href = (path: string) => string;

function nowhereSection(all: Catalogue, kind: ShownKind, href: Href): Html {
  const like = likeKinds(all, kind).map(
    ({ path, heading }) => html`<li><a href="${href(path)}">${heading}</a></li>`,
  );
  return html`
    <section aria-labelledby="like">
      <h2 id="like">No place has it now</h2>
      <p>
        None of our places has this kind of climate by the figures of today. These have winters like it; see also
        <a href="${href(climatesPath)}">all kinds of climate</a>.
      </p>
      <ul class="columns">${like}</ul>
    </section>
  `;
}

function placesSection(kind: ShownKind, href: Href): Html {
  const places = kindPlaces(kind);
  const links = places.map(
    ({ path, name, where }) => html`<li><a href="${href(path)}">${name}, ${where}</a></li>`,
  );
  return html`
    <section aria-labelledby="places">
      <h2 id="places">${sentence(countInWords(places.length, 'place'))}</h2>
      <ul class="columns">${links}</ul>
    </section>
  `;
}

function cultivarLine({ path, name, species, level, words, range }: KindCultivar, href: Href): Html {
  return html`
    <tr>
      <th class="name" scope="row">
        <a href="${href(path)}"><bdi>${name}</bdi></a>
        <span>${species}</span>
      </th>
      <td>${levelMark(level, words)}</td>
      <td>${range ?? 'the same in all'}</td>
    </tr>
  `;
}

function treesSection(all: Catalogue, kind: ShownKind, rows: readonly KindCultivar[], href: Href): Html {
  const listed = listedCultivars(all).length;
  const rest = html`
    <p>The first ${rows.length} of ${countInWords(listed, 'cultivar')}; the others do less well here.</p>
  `;
  return html`
    <section aria-labelledby="trees">
      <h2 id="trees">What does well in it</h2>
      <p>
        The word is that of the middle place${kind.places.length === 1 && ', here the only one'}. Why, and when each ripens, stands on the
        pages of the places and of the cultivars.
      </p>
      ${levelWordsHtml}
      <table class="ruled by-level">
        <caption class="unseen">Cultivars and how they do in this kind of climate, best first</caption>
        <thead>
          <tr>
            <th scope="col">Cultivar</th>
            <th scope="col">In the middle place</th>
            <th scope="col">Over the places</th>
          </tr>
        </thead>
        <tbody>${rows.map(row => cultivarLine(row, href))}</tbody>
      </table>
      ${rows.length < listed && rest}
    </section>
  `;
}

export function climatePage(
  all: Catalogue,
  kind: ShownKind,
  outlooks: Outlooks,
  { links }: PageContext,
): Page {
  const { href } = links;
  const { heading, path } = kind;
  const places = kindPlaces(kind);
  const occurs = places.length > 0;
  const about = occurs
    ? `${countInWords(places.length, 'place')}, among them ${places[0]?.name}, and how each of our cultivars does there.`
    : 'none of our places has such a climate now; the kinds nearest to it.';
  const meanings = classMeanings(kind.kind).map(({ axis, word, bounds }) => ({
    label: axis,
    value: `${sentence(word)}: ${bounds}`,
  }));
  const found = occurs
    ? [placesSection(kind, href), treesSection(all, kind, kindCultivars(all, outlooks, kind), href)]
    : nowhereSection(all, kind, href);
  return {
    title: heading,
    description: `${heading}: ${about}`,
    path,
    main: html`
      ${crumbs([{ path: climatesPath, name: 'Kinds of climate' }], heading, links)}
      <h1>${heading}</h1>
      <section class="stacked" aria-labelledby="means">
        <h2 id="means">What it means</h2>
        ${factList(meanings)}
      </section>
      ${found}
    `,
  };
}
