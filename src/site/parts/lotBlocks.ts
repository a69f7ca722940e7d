/** A list of lots by cultivar: what the cultivar is once, with its plate, then its lots, ready ones first and the others folded. */

import { fruitMarkHtml } from '../drawing/fruitMark.ts';
import { type Html, html } from '../html.ts';
import type { StockRow } from '../pages/stock/stock.ts';
import { countInWords } from '../words/words.ts';
import { compareBox } from './compareForm.ts';
import { isReady, type LotRowsOptions, lotRows } from './lotRows.ts';
import { groupBy } from './paging.ts';

function block(lots: readonly StockRow[], look: LotRowsOptions): Html {
  const first = lots[0]!;
  const { href } = look;
  const ready = lots.filter(isReady);
  const later = lots.filter(row => !isReady(row));
  const shown = ready.length > 0 ? ready : later;
  const more = ready.length > 0 && later.length > 0;
  const folded = html`
    <details>
      <summary>${countInWords(later.length, 'lot')} more of <bdi>${first.name}</bdi>, not ready yet</summary>
      ${lotRows(`Lots of ${first.name} to come`, later, look)}
    </details>
  `;
  return html`
    <div class="lots-of">
      <div class="of">
        <span class="mark">${fruitMarkHtml(first.plate, href)}</span>
        <h3><a href="${href(first.cultivarPath)}"><bdi>${first.name}</bdi></a></h3>
        <p>${first.flavor}<span class="unseen">. ${first.fruit}</span>, <span class="ripens ${first.ripening}">ripens ${first.ripens}</span></p>
        <p class="mine" data-mine="${first.cultivar}"></p>
        ${compareBox({ id: first.cultivar, name: first.name })}
      </div>
      <div>${[lotRows(`Lots of ${first.name}`, shown, look), more && folded]}</div>
    </div>
  `;
}

/** Cultivars with a lot that is ready, then those that only have lots to come, folded where others stand before them. */
export function lotBlocks(rows: readonly StockRow[], look: LotRowsOptions): Html {
  const cultivars = [...groupBy(rows, ({ cultivar }) => cultivar).values()];
  const ready = cultivars.filter(lots => lots.some(isReady));
  const later = cultivars.filter(lots => !lots.some(isReady));
  const blocks = (some: StockRow[][]) => some.map(lots => block(lots, look));
  if (ready.length === 0 || later.length === 0) return html`${blocks(cultivars)}`;
  const lots = later.reduce((sum, each) => sum + each.length, 0);
  return html`
    ${blocks(ready)}
    <details class="to-come">
      <summary>${countInWords(later.length, 'cultivar')} with nothing ready yet, ${countInWords(lots, 'lot')}</summary>
      ${blocks(later)}
    </details>
  `;
}
