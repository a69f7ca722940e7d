/** Last and first freezes of a place by temperature. */

import type { ClimateSummary } from '../../../core/climate/summary.ts';
import { type Html, html } from '../../html.ts';
import { freezeWarning } from '../../words/climateWords.ts';
import { unbroken } from '../../words/measures.ts';
import { type FreezeLine, freezeLines } from './place.ts';

function freezeRow({ threshold, none, without, last, first, known }: FreezeLine): Html {
  const seldom = without !== null;
  const dates = [...last, ...first].map(date =>
    date === null ? html`<td class="soft">none</td>` : html`<td>${date}</td>`,
  );
  return html`
    <tr${seldom && html` class="never"`}>
      <th scope="row">${threshold}</th>
      <td class="without">${none}</td>
      ${seldom ? html`<td colspan="6" class="soft seldom">${without}</td>` : dates}
      <td class="known">${known}</td>
    </tr>
  `;
}

export function freezesSection(climate: ClimateSummary): Html {
  const warning = freezeWarning(climate);
  return html`
    <section aria-labelledby="freezes">
      <h2 id="freezes">Freezes</h2>
      ${warning && html`<div class="notice"><p>${unbroken(warning)}</p></div>`}
      <p>
        A freeze is a night at or below the temperature. Three dates: early, middle and late; one year in ten is earlier than the first, one
        later than the last. None: so many years have no such freeze.
      </p>
      <table class="ruled freeze-table">
        <caption class="unseen">Last and first freezes by temperature</caption>
        <thead>
          <tr>
            <td></td>
            <td></td>
            <th scope="colgroup" colspan="3">Last freeze</th>
            <th scope="colgroup" colspan="3">First freeze</th>
            <td></td>
          </tr>
          <tr>
            <th scope="col">At or below</th>
            <th scope="col">Years without</th>
            <th scope="col">early</th>
            <th scope="col">middle</th>
            <th scope="col">late</th>
            <th scope="col">early</th>
            <th scope="col">middle</th>
            <th scope="col">late</th>
            <th scope="col">Known</th>
          </tr>
        </thead>
        <tbody>${freezeLines(climate).map(freezeRow)}</tbody>
      </table>
    </section>
  `;
}
