/** Lots with what a buyer compares. One body for each lot, one line for each form. */

import { type Html, html } from '../html.ts';
import type { StockRow } from '../pages/stock/stock.ts';
import { type StockTableLook, stockBodies } from './stockRows.ts';

export function stockTable(caption: string, rows: readonly StockRow[], look: StockTableLook): Html {
  const named = look.under !== 'cultivar';
  const traits =
    named &&
    html`
    <th scope="col">Flavor</th>
    <th scope="col">Ripens</th>
  `;
  return html`
    <table class="stock folds ${named ? 'full' : 'short'}">
      <caption class="unseen">${caption}</caption>
      <thead>
        <tr>
          <th scope="col">${named ? 'Cultivar and lot' : 'Lot'}</th>
          ${traits}
          <th scope="col">Size</th>
          <th scope="col">Form</th>
          <th scope="col">Ready</th>
          <th scope="col" class="price">Price</th>
        </tr>
      </thead>
      ${stockBodies(rows, look)}
    </table>
  `;
}
