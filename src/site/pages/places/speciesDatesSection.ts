/** The days of the tree's year for each species of the yard, and whose days the guides of the place give. */

import type { CareYear } from '../../../core/care/careYear.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { USUAL_POT } from '../../../outlooks.ts';
import { type Html, html } from '../../html.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import { leadingOfYard } from '../guides/guideSubject.ts';
import { speciesDateHeadings, speciesDates } from '../guides/speciesDates.ts';
import { speciesName } from '../stock/stock.ts';

/** `years` are those of the species that the yard grows, at the place of this name. Nothing where it grows none. */
export function speciesDatesSection(all: Catalogue, years: readonly CareYear[], name: string): Html | null {
  const dates = speciesDates(years);
  if (dates.length === 0) return null;
  const leading = leadingOfYard(all);
  const whose =
    leading !== null &&
    dates.length > 1 &&
    `Guides for ${name} that are about all species give the days of ${speciesName(leading)}.`;
  const rows = dates.map(
    ({ species, cells }) => html`
      <tr>
        <th scope="row">${species}</th>
        ${cells.map(cell => html`<td>${cell}</td>`)}
      </tr>
    `,
  );
  const table = html`
    <table class="ruled">
      <caption class="unseen">Days of the tree’s year by species, drawn from simulated years of this climate</caption>
      <thead>
        <tr>
          <th scope="col">Species</th>
          ${speciesDateHeadings.map(heading => html`<th scope="col">${heading}</th>`)}
        </tr>
      </thead>
      <tbody>${rows}</tbody>
    </table>
  `;
  return html`
    <section aria-labelledby="species-dates">
      <h2 id="species-dates">The tree’s year, by species</h2>
      <p>
        What the dates of care hang on. A range is of eight years in ten; one year in ten is earlier than its start, one later than its end.
        At risk from: in one year in ten such a night has come by that day. Pots are of the size ${USUAL_POT}. ${whose}
      </p>
      ${scrollFrame('Table of dates by species', table)}
    </section>
  `;
}
