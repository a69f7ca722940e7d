/** Rows of the stock table, as text. A lot's row stands on many pages, and is written once for each kind of table. */

import { fruitMarkHtml } from '../drawing/fruitMark.ts';
import { attribute, type Html, html } from '../html.ts';
import { oncePer } from '../memo.ts';
import type { StockLine, StockRow } from '../pages/stock/stock.ts';

/** Where the table stands decides what goes without saying: the species, or the cultivar with its traits. */
type StockTableKind = 'species' | 'form' | 'cultivar';

export interface StockTableLook {
  under: StockTableKind;
  /** Whether each row keeps a slot for the verdict at the visitor's place. */
  own: boolean;
  href: (path: string) => string;
}

function lineCells({ form, formName, state, words, price }: StockLine): Html {
  // What is ready leaves when the weather at both ends lets it: the words of a chosen place take the place of these.
  const sent = attribute('data-sent', state === 'ready' && form);
  return html`
    <td class="form">${formName}</td>
    <td class="when"><span class="state ${state}"${sent}>${words}</span></td>
    <td class="price">${price ?? '–'}</td>
  `;
}

/** Cells that stand once for all forms of a lot. */
function lotCells(row: StockRow, { under, own, href }: StockTableLook): Html {
  const span = row.lines.length;
  const size = html`<td class="size" rowspan="${span}">${row.size} <span>${row.left} left</span></td>`;
  if (under === 'cultivar') {
    return html`
      <th class="name" scope="rowgroup" rowspan="${span}"><a href="${href(row.path)}">Lot ${row.lot}</a></th>
      ${size}
    `;
  }
  const second = under === 'form' ? `${row.species}, lot ${row.lot}` : `lot ${row.lot}`;
  const mine = own && html`<span class="mine" data-mine="${row.cultivar}"></span>`;
  return html`
    <th class="name" scope="rowgroup" rowspan="${span}">
      ${fruitMarkHtml(row.mark, href)}<a href="${href(row.path)}"><bdi>${row.name}</bdi></a><span>${second}</span>
    </th>
    <td class="flavor" rowspan="${span}">${row.flavor}<span class="unseen">. ${row.fruit}</span></td>
    <td class="ripens ${row.ripening}" rowspan="${span}" data-head="ripens">${row.ripens}${mine}</td>
    ${size}
  `;
}

function bodyOf(row: StockRow, look: StockTableLook): Html {
  const [first, ...further] = row.lines.map(lineCells);
  if (!first) return html``;
  return html`
    <tbody>
      <tr>${[lotCells(row, look), first]}</tr>
      ${further.map(cells => html`<tr>${cells}</tr>`)}
    </tbody>
  `;
}

const bodies = oncePer((_: StockRow) => new Map<string, Html>());

/** A table body for each lot. */
export function stockBodies(rows: readonly StockRow[], look: StockTableLook): Html {
  const kind = `${look.under} ${look.own}`;
  return html`${rows.map(row => {
    const made = bodies(row);
    const body = made.get(kind) ?? bodyOf(row, look);
    made.set(kind, body);
    return body;
  })}`;
}
