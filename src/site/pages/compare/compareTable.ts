/** A table of cultivars with their plates at one scale and their seasons on one axis; what differs from most is marked. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { comparePath } from '../../addresses/paths.ts';
import { fruitMarkHtml } from '../../drawing/fruitMark.ts';
import { ribbonMonths } from '../../drawing/ribbon.ts';
import { seasonBar, seasonGrid } from '../../drawing/seasonBarFigure.ts';
import { type Html, html } from '../../html.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import { shortMonth } from '../../words/yearDays.ts';
import {
  axisInWords,
  type ComparedRow,
  type CompareKind,
  comparedTraits,
  differences,
  seasonIn,
} from './compare.ts';

type Href = (path: string) => string;

function monthLetters(lat: number): Html {
  const letters = ribbonMonths(lat).map(month => html`<span>${shortMonth(month + 1).slice(0, 1)}</span>`);
  return html`<span class="months" aria-hidden="true">${letters}</span>`;
}

function rowHtml(
  all: Catalogue,
  here: PlaceAnswers,
  row: ComparedRow,
  differs: readonly boolean[],
  href: Href,
): Html {
  const traits = row.traits.map((value, trait) =>
    differs[trait] ? html`<td><span class="differs">${value}</span></td>` : html`<td>${value}</td>`,
  );
  return html`
    <tr>
      <td class="picture">
        <label class="keep"><input type="checkbox" name="c" value="${row.id}"> <span class="unseen">Keep ${row.name}</span></label>
        ${fruitMarkHtml(row.mark, href)}
      </td>
      <th class="name" scope="row"><a href="${href(row.path)}"><bdi>${row.name}</bdi></a></th>
      <td class="seasons">${seasonBar(seasonIn(all, here, row.id))}</td>
      ${traits}
    </tr>
  `;
}

export interface CompareTable {
  kind: CompareKind;
  caption: string;
  rows: readonly ComparedRow[];
}

/** `here` is the yard's own place, whose year the seasons are drawn on. */
export function compareTable(
  all: Catalogue,
  here: PlaceAnswers,
  { kind, caption, rows }: CompareTable,
  href: Href,
): Html {
  const { home } = all;
  const differs = differences(rows);
  const table = html`
    <table class="compare">
      <caption>
        ${caption}. Fruits are to one scale. The bar is the time of the first ripe fruit at ${home.name}, ${axisInWords(home.lat)}, in eight
        years in ten; an outlined bar needs a head start under cover. <span class="differs">Underlined</span>: differs from most in this table.
      </caption>
      <thead>
        <tr>
          <th scope="col" colspan="2">Cultivar</th>
          <th scope="col">At ${home.name} ${monthLetters(home.lat)}</th>
          ${comparedTraits(kind).map(trait => html`<th scope="col">${trait}</th>`)}
        </tr>
      </thead>
      <tbody>${rows.map((row, at) => rowHtml(all, here, row, differs[at]!, href))}</tbody>
    </table>
  `;
  return html`
    ${seasonGrid(all.climates.get(home.id)!, home.lat)}
    <form class="compare-form" method="get" action="${href(comparePath)}">
      <p class="buttons">
        Check the cultivars you want.
        <label class="only"><input type="checkbox"> Show only those</label>
        <button type="submit">Side by side</button>
      </p>
      ${scrollFrame(caption, table)}
    </form>
  `;
}
