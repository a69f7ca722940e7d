/** Cultivars with the traits a buyer compares. A cultivar's row stands in several lists and is written once. */

import { fruitMarkHtml } from '../../drawing/fruitMark.ts';
import { type Html, html } from '../../html.ts';
import { memoize } from '../../memo.ts';
import { compareBox } from '../../parts/compareForm.ts';
import type { CultivarRow } from './cultivar.ts';

function rowHtml(row: CultivarRow, href: (path: string) => string): Html {
  return html`
    <tr>
      <th class="name" scope="row">
        ${fruitMarkHtml(row.mark, href)}<a href="${href(row.path)}"><bdi>${row.name}</bdi></a>${compareBox(row)}
      </th>
      <td class="flavor">${row.flavor}</td>
      <td class="ripens ${row.ripening}" data-head="ripens">${row.ripens}<span class="mine" data-mine="${row.id}"></span></td>
      <td class="size">${row.fruit} <span>${row.size}</span></td>
      <td class="crops">${row.crops}</td>
      <td class="pollination" data-head="pollination:">${row.pollination}</td>
      <td class="when"><span class="state ${row.stock.state}">${row.stock.words}</span></td>
    </tr>
  `;
}

const written = memoize((href: (path: string) => string) =>
  memoize((row: CultivarRow) => rowHtml(row, href)),
);

export function cultivarTable(
  caption: string,
  rows: readonly CultivarRow[],
  href: (path: string) => string,
): Html {
  return html`
    <table class="traits folds">
      <caption class="unseen">${caption}</caption>
      <thead>
        <tr>
          <th scope="col">Cultivar</th>
          <th scope="col">Flavor</th>
          <th scope="col">Ripens</th>
          <th scope="col">Fruit</th>
          <th scope="col">Crops</th>
          <th scope="col">Pollination</th>
          <th scope="col">Stock</th>
        </tr>
      </thead>
      <tbody>${rows.map(written(href))}</tbody>
    </table>
  `;
}
