/** What answers rest on, as text. */

import type { Reason } from '../../core/records/common.ts';
import { attribute, type Html, html } from '../html.ts';
import type { Why } from '../pages/lots/lot.ts';
import { standingInWords } from '../words/words.ts';

/** Items of a list of reasons, each with its standing and source. */
function reasonItems(because: readonly Reason[]): Html {
  return html`${because.map(
    ({ text, standing, source }) =>
      html`<li>${text} <span class="standing">(${standingInWords(standing, source)})</span></li>`,
  )}`;
}

/** Closed rows: question and answer, and within what the answer rests on. */
function whyItems(answers: readonly Why[]): Html {
  return html`${answers.map(
    ({ question, answer, because, isPrice = false }) =>
      html`
        <details${attribute('data-priced', isPrice)}>
          <summary><span>${question}</span> <b>${answer}</b></summary>
          ${reasonList(because)}
        </details>
      `,
  )}`;
}

/** A list of reasons. */
export function reasonList(because: readonly Reason[]): Html {
  return html`<ul class="reasons">${reasonItems(because)}</ul>`;
}

/** Questions, each with its answer and what the answer rests on. */
export function whyList(answers: readonly Why[]): Html {
  return html`<div class="why">${whyItems(answers)}</div>`;
}
