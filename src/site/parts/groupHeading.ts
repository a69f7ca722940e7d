/** Heading of a group in a list, with its botanical name and how many rows it has. */

import { type Html, html } from '../html.ts';
import { countInWords } from '../words/words.ts';
import type { PageGroup } from './paging.ts';

/** `of` is what is counted, in the singular. */
export function groupHeading(group: PageGroup<unknown>, of: string): Html {
  const { id, heading, botanical, continued, count } = group;
  return html`
    <h2 id="${id}" class="counted">
      <span>${heading} ${botanical && html`<span class="botanical">${botanical}</span>`}</span>
      <span class="count">${continued && 'continued, '}${countInWords(count, of)}</span>
    </h2>
  `;
}
