/** The shelves of fruit on the first page, with a ruler below each. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { fruitMarkHtml } from '../../drawing/fruitMark.ts';
import { markScale } from '../../drawing/fruitMarks.ts';
import { attribute, type Html, html } from '../../html.ts';
import type { Shelf, ShelvedFruit } from './shelves.ts';

type Href = (path: string) => string;

/** International inch (1959). */
const MM_PER_INCH = 25.4;

/** One inch of the ruler: a long mark, and three short ones for the quarters. */
function ruler(all: Catalogue): Html {
  const inch = markScale(all, 'shelf') * MM_PER_INCH;
  const quarters = [1, 2, 3].map(
    quarter => `M${((inch * quarter) / 4).toFixed(2)} 0v${quarter === 2 ? 5 : 3}`,
  );
  return html`
    <svg class="unseen" width="0" height="0" aria-hidden="true">
      <pattern id="inch" width="${inch.toFixed(2)}" height="10" patternUnits="userSpaceOnUse">
        <path d="M0.5 0v9${quarters.join('')}"/>
      </pattern>
    </svg>
  `;
}

function fruitItem({ path, name, mark, words, ready }: ShelvedFruit, href: Href): Html {
  return html`
    <li><a${attribute('class', ready && 'is-ready')} href="${href(path)}">${fruitMarkHtml(mark, href)}<bdi>${name}</bdi><span class="unseen">: ${words}${ready && ', ready today'}</span></a></li>
  `;
}

function shelfHtml({ month, fruits }: Shelf, place: string, href: Href): Html {
  return html`
    <section class="shelf">
      <h3>${month ?? `Not outdoors at ${place}`}</h3>
      <ul>${fruits.map(fruit => fruitItem(fruit, href))}</ul>
      <svg class="ruler" height="10" aria-hidden="true"><rect width="100%" height="10" fill="url(#inch)"/></svg>
    </section>
  `;
}

/** Nothing where the yard lists no cultivar. */
export function shelvesSection(all: Catalogue, shelves: readonly Shelf[], href: Href): Html | null {
  if (shelves.length === 0) return null;
  const anyReady = shelves.some(({ fruits }) => fruits.some(({ ready }) => ready));
  return html`
    <section class="shelves" aria-labelledby="fruits">
      <h2 id="fruits">In the order they ripen at ${all.home.name}</h2>
      <p>All to one scale; a long mark of the ruler is an inch. ${anyReady && html`Names <span class="is-ready">in color</span> are trees ready today.`}</p>
      ${ruler(all)}
      <div class="months">${shelves.map(shelf => shelfHtml(shelf, all.home.name, href))}</div>
    </section>
  `;
}
