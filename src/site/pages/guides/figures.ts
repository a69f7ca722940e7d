/** Figures of the species a guide speaks of. */

import { type Html, html } from '../../html.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import type { SpeciesTable } from './speciesTable.ts';

export function speciesFigures({ headings, rows }: SpeciesTable): Html {
  const heads = headings.map(heading => html`<th scope="col">${heading}</th>`);
  const lines = rows.map(({ species, cells }) => {
    const figures = cells.map(
      ({ figure, known }) => html`<td>${figure} <span class="soft meaning">${known}</span></td>`,
    );
    return html`
      <tr>
        <th scope="row">${species}</th>
        ${figures}
      </tr>
    `;
  });
  const table = html`
    <table class="ruled species-figures">
      <caption>Our figure: no trial was found</caption>
      <thead>
        <tr>
          <th scope="col">Species</th>
          ${heads}
        </tr>
      </thead>
      <tbody>${lines}</tbody>
    </table>
  `;
  return html`
    <section aria-labelledby="species">
      <h2 id="species">Figures by species</h2>
      ${scrollFrame('Table of figures by species', table)}
    </section>
  `;
}
