/** The page for a walk on the phone: one lot at a time, large keys, words to choose. For the grower; search engines do not list it. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { healthSigns, leafSigns, rootSigns, wheres, woodSigns } from '../../../core/records/walk.ts';
import type { TypedColumn } from '../../../core/walking/entry.ts';
import { walkPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { walkDataPath, walkManifestPath, walkWorkerPath } from './paths.ts';

/** A field for a number, with keys that take one away and add one. */
function count(column: TypedColumn, label: string): Html {
  return html`
    <div class="count" data-field="${column}">
      <label for="${column}">${label}</label>
      <button type="button" data-step="-1" aria-label="${label}: one less">−</button>
      <input type="text" id="${column}" inputmode="numeric" autocomplete="off">
      <button type="button" data-step="1" aria-label="${label}: one more">+</button>
      <output data-seen></output>
    </div>
  `;
}

function measure(column: TypedColumn, label: string): Html {
  return html`
    <div class="measure" data-field="${column}">
      <label for="${column}">${label}</label>
      <input type="text" id="${column}" inputmode="decimal" autocomplete="off">
      <output data-seen></output>
    </div>
  `;
}

/** Words of which one is chosen; choosing it again takes it back. */
function words(column: TypedColumn, label: string, choices: readonly string[]): Html {
  const keys = choices.map(
    word => html`<button type="button" data-word="${word}" aria-pressed="false">${word}</button>`,
  );
  return html`
    <div class="words" role="group" aria-label="${label}" data-field="${column}">
      <span>${label}</span>
      <div>${keys}</div>
      <output data-seen></output>
    </div>
  `;
}

function fields(inInches: boolean): Html {
  return html`
    ${count('left', 'Left')}
    ${count('lost', 'Lost')}
    ${measure(inInches ? 'height_in' : 'height_cm', inInches ? 'Height, in' : 'Height, cm')}
    ${measure('caliper_mm', 'Stem, mm')}
    ${words('roots', 'Roots', rootSigns)}
    ${words('leaves', 'Leaves', leafSigns)}
    ${words('wood', 'Wood', woodSigns)}
    ${words('health', 'Health', healthSigns)}
    ${words('where', 'Where', wheres)}
    ${count('returned', 'Came back')}
    <div class="note" data-field="note">
      <label for="note">Note, for the yard</label>
      <input type="text" id="note" autocomplete="off" maxlength="300">
    </div>
  `;
}

export function walkPage({ home, yard }: Catalogue, { links: { href } }: PageContext): Page {
  return {
    title: 'Walk',
    description: `Count and look at the lots of ${yard.name}, one after the other, on a phone.`,
    path: walkPath,
    unlisted: true,
    manifest: walkManifestPath,
    scripts: ['walk'],
    forGrower: true,
    styles: ['walk'],
    main: html`
      <h1>Walk</h1>
      <noscript><p class="notice">This page needs scripts. On paper, the count sheets do the same.</p></noscript>
      <div class="walk" data-walk="${href(walkDataPath)}" data-worker="${href(walkWorkerPath)}" hidden>
        <p data-status role="status"></p>
        <p class="notice" data-day-question hidden></p>
        <form data-lot autocomplete="off">
          <h2 tabindex="-1"><span data-place>Lot</span> <bdi data-name></bdi></h2>
          <nav class="turn" aria-label="Lots">
            <button type="button" data-turn="-1">Back</button>
            <button type="button" data-turn="1">Next</button>
          </nav>
          <ul class="questions" data-questions aria-live="polite"></ul>
          ${fields(home.country === 'US')}
          <div class="photo">
            <label for="photo">Photograph</label>
            <input id="photo" type="file" accept="image/*" capture="environment">
            <output data-photo></output>
          </div>
          <p class="turn"><button type="submit">Next lot</button></p>
        </form>
        <details>
          <summary>All lots</summary>
          <ol data-lots></ol>
        </details>
        <section aria-labelledby="done">
          <h2 id="done">When you are done</h2>
          <p data-summary></p>
          <p><label for="day">Day of the walk</label> <input id="day" type="date"></p>
          <p class="ends">
            <a class="button" data-new-file hidden>Put it into the repository</a>
            <button type="button" data-share hidden>Share the file</button>
            <a class="button" data-save>Save the file</a>
          </p>
          <p data-end></p>
          <p><button type="button" data-clear>Start a new walk</button></p>
        </section>
      </div>
    `,
  };
}
