/** Labels and values, as text. */

import { type Html, html } from '../html.ts';
import type { Fact } from '../pages/lots/lot.ts';

/** Items of a description list. */
function factItems(facts: readonly Fact[]): Html {
  return html`${facts.map(({ label, value }) => html`<div><dt>${label}</dt><dd>${value}</dd></div>`)}`;
}

/** Labels and values, ruled. */
export function factList(facts: readonly Fact[]): Html {
  return html`<dl class="facts">${factItems(facts)}</dl>`;
}
