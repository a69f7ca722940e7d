/** The table behind the picture of a place's year. */

import type { ClimateSummary } from '../../../core/climate/summary.ts';
import type { Place } from '../../../core/records/place.ts';
import { type Html, html } from '../../html.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import { knownInWords } from '../../words/climateWords.ts';
import { type MonthLine, monthLines } from './place.ts';

function monthRow({ name, low, high, cold, hot, freeze, rain, deficit }: MonthLine, hasRain: boolean): Html {
  const temperatures = [low, high, cold, hot].map(
    ({ fahrenheit, celsius }) => html`<td>${fahrenheit} <span class="soft">${celsius}</span></td>`,
  );
  return html`
    <tr>
      <th scope="row">${name}</th>
      ${temperatures}
      <td>${freeze}</td>
      ${hasRain && html`<td>${rain}</td>`}
      <td>${deficit}</td>
    </tr>
  `;
}

export function monthsTable(place: Place, climate: ClimateSummary): Html {
  const hasRain = place.rainMm !== null;
  const table = html`
    <table class="ruled months">
      <caption class="unseen">Temperatures, freezes, rain and drying power of each month</caption>
      <thead>
        <tr>
          <th scope="col">Month</th>
          <th scope="col">Low</th>
          <th scope="col">High</th>
          <th scope="col">1 night in 10 below</th>
          <th scope="col">1 day in 10 above</th>
          <th scope="col">Freeze</th>
          ${hasRain && html`<th scope="col">Rain</th>`}
          <th scope="col">Drying power (vapor pressure deficit), kPa</th>
        </tr>
      </thead>
      <tbody>${monthLines(place, climate).map(month => monthRow(month, hasRain))}</tbody>
    </table>
  `;
  return html`
    <details>
      <summary>The table behind the picture</summary>
      <p>
        Low, high, rain and drying power are means of the month. What one night and one day in ten passes, and the share of years in which
        the night is at or below 32 F, are of the 15th.
      </p>
      ${scrollFrame('Table of the months', table)}
      ${!hasRain && html`<p>Rain is not known for this place.</p>`}
      <p>
        Means of the months: ${place.source} Spread and freezes are ${climate.heat.base8cap36.standing}. Drying power: ${knownInWords(climate.deficitKpa)}.
      </p>
    </details>
  `;
}
