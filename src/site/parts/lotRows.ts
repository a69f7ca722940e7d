/** Lots with a cell for each form of sale: its price and how it stands. A lot's row stands on many pages and is written once. */

import { type Form, forms } from '../../core/records/common.ts';
import { attribute, type Html, html } from '../html.ts';
import { memoize } from '../memo.ts';
import type { StockLine, StockRow } from '../pages/stock/stock.ts';

export interface LotRowsOptions {
  /** The forms that have a column. */
  forms: readonly Form[];
  href: (path: string) => string;
}

const headings: Readonly<Record<Form, string>> = {
  'leafed-pot': 'Leafed',
  'dormant-pot': 'Dormant',
  'bare-root': 'Bare-root',
};

/** Whether any form of a row that is shown is ready. */
export function isReady({ lines }: Pick<StockRow, 'lines'>): boolean {
  return lines.some(({ state }) => state === 'ready');
}

function cell(line: StockLine | undefined): Html {
  if (line === undefined) return html`<td>–</td>`;
  const { form, state, brief, price, words } = line;
  if (brief === null) return html`<td><span>${words.toLowerCase()}</span></td>`;
  // What is ready leaves when the weather at both ends lets it: the words of a chosen place take the place of these.
  const sent = attribute('data-sent', state === 'ready' && form);
  return html`<td class="${state}"><b>${price ?? 'no price'}</b> <span${sent}>${brief}</span></td>`;
}

function rowOf(row: StockRow, { forms: shown, href }: LotRowsOptions): Html {
  const cells = shown.map(form => cell(row.lines.find(line => line.form === form)));
  return html`
    <tr><th scope="row"><a href="${href(row.path)}">${row.size}</a> <span>${row.left} left</span></th>${cells}</tr>
  `;
}

const rows = memoize((_: StockRow) => new Map<string, Html>());

/** A table of lots; its caption is read aloud only. */
export function lotRows(caption: string, lots: readonly StockRow[], look: LotRowsOptions): Html {
  const key = look.forms.join(' ');
  const heads = look.forms.map(form => html`<th scope="col">${headings[form]}</th>`);
  const body = lots.map(row => {
    const made = rows(row);
    const written = made.get(key) ?? rowOf(row, look);
    made.set(key, written);
    return written;
  });
  return html`
    <table class="lots"${attribute('data-columns', look.forms.length < forms.length && String(look.forms.length))}>
      <caption class="unseen">${caption}</caption>
      <thead><tr><th scope="col">Lot</th>${heads}</tr></thead>
      <tbody>${body}</tbody>
    </table>
  `;
}
