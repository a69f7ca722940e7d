/** Why a verdict is as it is, and what would make it better, each with its standing and source. */

import { type Html, html } from '../html.ts';
import type { Told } from '../words/verdict.ts';

function reasonsHtml(reasons: readonly Told[]): Html {
  if (reasons.length === 0) return html``;
  const items = reasons.map(
    ([text, known]) => html`<li>${text} <span class="standing">(${known})</span></li>`,
  );
  return html`<ul class="reasons">${items}</ul>`;
}

export function toldHtml(because: readonly Told[], change: readonly Told[]): Html {
  const better = change.length > 0 && html`<p class="subhead">What would make it better</p>`;
  return html`${reasonsHtml(because)}${better}${reasonsHtml(change)}`;
}
