/** What of a plant can hurt someone, and where it may not go. */

import type { Species } from '../../core/records/species.ts';
import { type Html, html } from '../html.ts';
import { memoize } from '../memo.ts';
import { speciesName } from '../pages/stock/stock.ts';
import { hazardWords, standingInWords } from '../words/words.ts';

function hazards(species: Species): Html {
  if (species.hazards.length === 0) {
    return html`
      <p>We know of nothing in ${speciesName(species)} that hurts people or pets who handle it with ordinary care.</p>
    `;
  }
  const items = species.hazards.map(
    ({ to, caution, standing, source }) =>
      html`
        <li>
          <strong>${hazardWords[to]}:</strong> ${caution}
          <span class="standing">(${standingInWords(standing, source)})</span>
        </li>
      `,
  );
  return html`<ul class="reasons">${items}</ul>`;
}

/** Written once for each species. */
export const cautions = memoize(
  (species: Species): Html =>
    html`
      <section aria-labelledby="care-taken">
        <h2 id="care-taken">Take care</h2>
        ${hazards(species)}
        <h3>Moving it</h3>
        <p>${species.movement} The rules of your own plant health authority decide, and they change.</p>
      </section>
    `,
);
