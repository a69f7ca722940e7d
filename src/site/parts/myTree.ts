/** What a cultivar does at the visitor's place, and when a tree can travel there. Filled in the browser; without scripts it leads on. */

import { guidesPath } from '../addresses/guidePaths.ts';
import { myPlacePath, placesPath } from '../addresses/paths.ts';
import { type Html, html } from '../html.ts';
import { oncePer } from '../memo.ts';

/**
 * The line in which a visitor chooses a place by ZIP code, and which then names it. Without scripts the form leads to the page that shows the
 * other ways. A page with it needs the scripts of my place. `asks` is what the place is asked for: `How each lot does where you are`.
 */
export function myPlaceLine(asks: string, href: (path: string) => string): Html {
  return html`
    <div class="my-line" data-mine-line>
      <p data-mine-words>${asks}:</p>
      <form class="place-field" action="${href(myPlacePath)}" method="get">
        <label for="mine-place">Town or ZIP code</label>
        <span><input id="mine-place" name="zip" type="text" maxlength="60" autocomplete="postal-code"><button type="submit">Show</button></span>
        <a href="${href(myPlacePath)}">or choose another way</a>
      </form>
      <p class="my-status" role="status" data-mine-status></p>
    </div>
  `;
}

const fields = [
  { field: 'words', label: 'Verdict' },
  { field: 'ripens', label: 'First ripe fruit' },
  { field: 'forms', label: 'Form to buy today' },
  { field: 'travel', label: 'Can it travel there' },
] as const;

interface Shown {
  id: string;
  name: string;
}

function section({ id, name }: Shown, href: (path: string) => string): Html {
  const facts = fields.map(
    ({ field, label }) => html`
      <div>
        <dt>${label}</dt>
        <dd data-field="${field}">–</dd>
      </div>
    `,
  );
  return html`
    <section class="stacked my-tree" aria-labelledby="yours" data-mine-tree="${id}">
      <h2 id="yours">At your place</h2>
      ${myPlaceLine(`How ${name} does where you are, and when it can travel there`, href)}
      <noscript>
        <p>
          Scripts are off in this browser, so this part stays empty. The page of the <a href="${href(placesPath)}">place</a> most like yours
          says the same.
        </p>
      </noscript>
      <dl class="facts">${facts}</dl>
      <p><a href="${href(guidesPath)}" data-field="care">How to care for it there</a></p>
      <details>
        <summary>Why</summary>
        <div data-field="why"><p>Choose a place first.</p></div>
      </details>
    </section>
  `;
}

const sections = oncePer((href: (path: string) => string) =>
  oncePer((cultivar: Shown) => section(cultivar, href)),
);

/** A cultivar at the visitor's place. All its lots show the same. */
export function myTree(cultivar: Shown, href: (path: string) => string): Html {
  return sections(href)(cultivar);
}
