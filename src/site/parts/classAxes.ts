/** The axes by which places are classed, with what each class means. */

import { type Html, html } from '../html.ts';
import { unbroken } from '../words/measures.ts';
import { classAxes } from '../words/placeClasses.ts';
import { sentence } from '../words/words.ts';

function axisHtml({ id, name, asks, classes }: (typeof classAxes)[number]): Html {
  const meanings = classes.map(
    ({ word, bounds }) => html`
      <div>
        <dt>${sentence(word)}</dt>
        <dd>${unbroken(sentence(bounds))}.</dd>
      </div>
    `,
  );
  return html`
    <section aria-labelledby="axis-${id}">
      <h3 id="axis-${id}">${name}</h3>
      <p>${asks}</p>
      <dl class="axis">${meanings}</dl>
    </section>
  `;
}

export const classAxesHtml: Html = html`<div class="halves">${classAxes.map(axisHtml)}</div>`;
