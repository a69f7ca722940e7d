/** How far the computed figures can be trusted: every table of evidence, with what it means and where the model is weak. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { EvidenceTable } from '../../../core/evidence/table.ts';
import { howWeKnowPath, placesPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { type EvidenceView, evidenceSummary, evidenceView } from './evidence.ts';
import { evidenceSection } from './evidenceSection.ts';

function wordsSection(href: (path: string) => string): Html {
  return html`
    <section class="stacked" aria-labelledby="words">
      <h2 id="words">What the words mean</h2>
      <dl class="facts">
        <div>
          <dt>Published</dt>
          <dd>Printed by the source named. A published figure always wins over a computed one.</dd>
        </div>
        <div>
          <dt>Modeled</dt>
          <dd>
            Counted in a thousand simulated years of daily lows and highs, drawn from the monthly means of
            <a href="${href(placesPath)}">the place</a> and from how much single days differ there. A range is what eight years in ten keep to.
          </dd>
        </div>
        <div>
          <dt>Modeled from an estimate</dt>
          <dd>
            The same where nobody has published how much single days differ, or how moist the air is. Both are then estimated from the monthly
            means, and the answer is less sure.
          </dd>
        </div>
        <div>
          <dt>Our working figure</dt>
          <dd>A bound or rule we set ourselves. It can be changed, and is not evidence of anything.</dd>
        </div>
      </dl>
    </section>
  `;
}

function weakSection(tables: readonly EvidenceView[]): Html {
  const items = tables.map(
    ({ id, title, weak }) => weak !== null && html`<li>${weak} <a href="#${id}">${title}</a></li>`,
  );
  return html`
    <section aria-labelledby="weak">
      <h2 id="weak">Where the figures are weak</h2>
      <ul class="reasons">
        <li>
          A simulated year knows nothing of your own hollow, wall or hillside. A low spot freezes earlier than the station, a south wall
          later.
        </li>
      </ul>
      <details>
        <summary>Table by table</summary>
        <ul class="reasons">${items}</ul>
      </details>
    </section>
  `;
}

export function howWeKnowPage(
  { yard }: Catalogue,
  evidence: readonly EvidenceTable[],
  { links: { href } }: PageContext,
): Page {
  const tables = evidence.map(evidenceView);
  return {
    title: 'How we know',
    description: `What the figures of ${yard.name} rest on: the climate model beside published figures, long records and the zone map, row by row.`,
    path: howWeKnowPath,
    styles: ['evidence'],
    main: html`
      <h1>How we know</h1>
      <p class="standfirst">
        Dates, heat and winter lows on this site are computed. Here they stand beside figures that others have published or observed.
      </p>
      <p>${evidenceSummary(tables)}</p>
      ${wordsSection(href)}
      ${weakSection(tables)}
      <section aria-labelledby="tables">
        <h2 id="tables">The tables</h2>
        <details>
          <summary>All ${tables.length} tables</summary>
          <ol class="columns">${tables.map(({ id, title }) => html`<li><a href="#${id}">${title}</a></li>`)}</ol>
        </details>
      </section>
      ${tables.map(evidenceSection)}
    `,
  };
}
