/** Check boxes beside the cultivars of a list, and the form that puts those that are checked side by side. A plain form: no script is asked for. */

import { comparePath } from '../addresses/paths.ts';
import { type Html, html } from '../html.ts';
import { COMPARED_AT_MOST } from '../pages/compare/compare.ts';

/** The box of one cultivar. */
export function compareBox({ id, name }: { id: string; name: string }): Html {
  return html`<label class="to-compare"><input type="checkbox" name="c" value="${id}"> Compare <span class="unseen">${name}</span></label>`;
}

/** A list whose cultivars have boxes, with the button below it. */
export function compareForm(list: Html, href: (path: string) => string): Html {
  return html`
    <form class="comparing" action="${href(comparePath)}">
      ${list}
      <p class="compare-bar"><button type="submit">Compare those checked</button> <span>up to ${COMPARED_AT_MOST}</span></p>
    </form>
  `;
}
