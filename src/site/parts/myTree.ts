/** What a cultivar does at the visitor's place, and when a tree can travel there. Filled in the browser; without scripts it leads on. */

import type { Level } from '../../core/match/answers.ts';
import type { Form } from '../../core/records/common.ts';
import { guidesPath } from '../addresses/guidePaths.ts';
import { myPlacePath } from '../addresses/paths.ts';
import { type Html, html } from '../html.ts';
import { levelMark } from './level.ts';

/**
 * The line in which a visitor chooses a place by ZIP code, and which then names it. Without scripts the form leads to the page that shows the
 * other ways. A page with it needs the scripts of my place. `asks` is what the place is asked for: `How each lot does where you are`.
 */
export function myPlaceLine(asks: string, href: (path: string) => string, end = ':'): Html {
  return html`
    <div class="my-line" data-mine-line>
      <p data-mine-words>${asks}${end}</p>
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
  { field: 'forms', label: 'To buy today' },
] as const;

/** How a cultivar does in a place, told while the visitor has chosen none. */
export interface Example {
  path: string;
  name: string;
  level: Level;
  ripens: string;
}

export interface MyTree {
  cultivar: { id: string; name: string };
  examples: readonly Example[];
  /** The forms that are ready: of the lot, or of any lot of the cultivar. */
  ready: readonly Form[];
}

function exampleItem({ path, name, level, ripens }: Example, href: (path: string) => string): Html {
  return html`<li><a href="${href(path)}"><bdi>${name}</bdi></a> ${levelMark(level)} <span>${ripens}</span></li>`;
}

/** A cultivar at the visitor's place; until one is chosen, at three places unlike each other. The answers and the examples share one room. */
export function myTree({ cultivar, examples, ready }: MyTree, href: (path: string) => string): Html {
  const facts = fields.map(
    ({ field, label }) => html`<div><dt>${label}</dt><dd data-field="${field}"></dd></div>`,
  );
  return html`
    <section class="my-tree" aria-labelledby="yours" data-mine-tree="${cultivar.id}" data-ready="${ready.join(' ')}">
      <h2 id="yours">Where you live</h2>
      ${myPlaceLine(`Does ${cultivar.name} live and ripen where you are`, href, '?')}
      <div class="either">
        <ul class="examples">${examples.map(example => exampleItem(example, href))}</ul>
        <div class="answers">
          <dl class="facts">${facts}</dl>
          <p><a href="${href(guidesPath)}" data-field="care">How to care for it there</a></p>
          <details>
            <summary>Why</summary>
            <div data-field="why"></div>
          </details>
          <details>
            <summary>Which ones do best there?</summary>
            <ol class="reasons" data-field="best"></ol>
          </details>
        </div>
      </div>
    </section>
  `;
}
