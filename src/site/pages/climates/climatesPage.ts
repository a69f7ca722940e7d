/** The kinds of climate that occur, and the axes they are made of. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { climatesPath, placesPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { classAxesHtml } from '../../parts/classAxes.ts';
import { airExceptions, summerExceptions } from '../../words/placeClasses.ts';
import { countInWords, sentence } from '../../words/words.ts';
import { climateKinds, kindsByWinter, type WinterKinds } from './climates.ts';

type Href = (path: string) => string;

/** Places named for each kind. */
const named = 4;

function kindRow({ path, heading, places }: WinterKinds['kinds'][number], href: Href): Html {
  const first = places.slice(0, named).map(({ name }) => name);
  const more = places.length - first.length;
  return html`
    <tr>
      <th scope="row"><a href="${href(path)}">${heading}</a></th>
      <td>${first.join(', ')}${more > 0 && ` and ${more} more`}</td>
    </tr>
  `;
}

function winterSection({ id, heading, kinds }: WinterKinds, href: Href): Html {
  const table = html`
    <table class="ruled kinds">
      <caption class="unseen">${heading}: kinds of climate, cool summers first, and places that have them</caption>
      <thead>
        <tr>
          <th scope="col">Kind</th>
          <th scope="col">Places</th>
        </tr>
      </thead>
      <tbody>${kinds.map(kind => kindRow(kind, href))}</tbody>
    </table>
  `;
  return html`
    <section aria-labelledby="${id}">
      <h3 id="${id}">${heading}</h3>
      ${kinds.length === 0 ? html`<p>None of our places.</p>` : table}
    </section>
  `;
}

export function climatesPage(all: Catalogue, { links: { href } }: PageContext): Page {
  const count = sentence(countInWords(climateKinds(all).length, 'kind'));
  return {
    title: 'Kinds of climate',
    description: `${count} of climate by winter, summer heat and air: which places have them, and which trees do well there.`,
    path: climatesPath,
    main: html`
      <h1>Kinds of climate</h1>
      <p class="standfirst">
        A kind of climate is told by three questions: how cold is the winter, how hot is the summer, and how damp is the air while fruit
        ripens. How long the season is between freezes stands on the page of each place.
      </p>
      <section aria-labelledby="kinds">
        <h2 id="kinds">The kinds that occur</h2>
        <p>${count} among our <a href="${href(placesPath)}">${countInWords(all.places.length, 'place')}</a>.</p>
        ${kindsByWinter(all).map(winter => winterSection(winter, href))}
      </section>
      <section aria-labelledby="axes">
        <h2 id="axes">The questions</h2>
        ${classAxesHtml}
        <p>${summerExceptions}</p>
        <p>${airExceptions} The bounds of winters, seasons and air are our working figures.</p>
      </section>
    `,
  };
}
