/** Where a cultivar does what: a few places with their reasons, then all of them by verdict. */

import { climatesPath } from '../../addresses/paths.ts';
import { usMap } from '../../drawing/usMapFigure.ts';
import { type Html, html } from '../../html.ts';
import { memoize } from '../../memo.ts';
import { levelMark, levelWordsHtml } from '../../parts/level.ts';
import { toldHtml } from '../../parts/told.ts';
import { countInWords } from '../../words/words.ts';
import type { PlaceVerdictWithReasons, ToldPlace } from './cultivarPlaces.ts';
import { type CultivarPlaces, type LevelGroup, type PlaceVerdict, placesSentence } from './cultivarPlaces.ts';

type Href = (path: string) => string;

function atPlace(name: string, verdict: PlaceVerdictWithReasons, href: Href): Html {
  const { place, level, words, ripens, because, change } = verdict;
  return html`
    <section class="at-place" aria-label="${name} at ${place.name}">
      <p class="name"><a href="${href(place.path)}"><bdi>${place.name}</bdi></a> <span>${place.where}; ${place.kind}</span></p>
      <p class="verdict">${levelMark(level, words)}</p>
      <p class="ripens">${ripens}</p>
      <details>
        <summary>Why<span class="unseen">, at ${place.name}</span></summary>
        ${toldHtml(because, change)}
      </details>
    </section>
  `;
}

/** What the row of a place says whatever the cultivar. */
const placeCells = memoize((href: Href) =>
  memoize(
    (place: ToldPlace): Html =>
      html`
        <th scope="row"><a href="${href(place.path)}"><bdi>${place.name}</bdi></a> <span class="soft">${place.where}</span></th>
        <td>${place.kind}</td>
      `,
  ),
);

function groupTable({ level, words, places }: LevelGroup, href: Href): Html {
  const cells = placeCells(href);
  const rows = places.map(
    ({ place, ripens }: PlaceVerdict) => html`<tr>${cells(place)}<td>${ripens}</td></tr>`,
  );
  return html`
    <h3>${levelMark(level, words)}</h3>
    <table class="ruled by-verdict">
      <caption class="unseen">${words}: places, their climate and when it ripens there</caption>
      <thead>
        <tr>
          <th scope="col">Place</th>
          <th scope="col">Winter, season, summer, air</th>
          <th scope="col">First ripe fruit</th>
        </tr>
      </thead>
      <tbody>${rows}</tbody>
    </table>
  `;
}

export function placesSection(name: string, where: CultivarPlaces, href: Href): Html {
  const { spread, groups, dots, count } = where;
  const sentence = placesSentence(where);
  const map = usMap({ title: `Where ${name} does what in the United States`, words: sentence, dots }, href);
  return html`
    <section aria-labelledby="where">
      <h2 id="where">How it does, place by place</h2>
      <p>${sentence} <a href="${href(climatesPath)}">Kinds of climate</a></p>
      ${levelWordsHtml}
      <div class="halves">
        ${map}
        <div>${spread.map(verdict => atPlace(name, verdict, href))}</div>
      </div>
      <details>
        <summary>All ${countInWords(count, 'place')} by verdict</summary>
        ${groups.map(group => groupTable(group, href))}
      </details>
    </section>
  `;
}
