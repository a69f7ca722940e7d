/** One table of evidence: errors over many places side by side, and every single row under its source. */

import { type Html, html } from '../../html.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import type { ErrorLine, EvidenceGroup, EvidenceLine, EvidenceView } from './evidence.ts';

function errorCell(line: EvidenceLine | null): Html {
  if (line === null) return html`<td>–</td>`;
  const allowed = line.expected === '0' ? line.within : `${line.expected}, less ${line.within}`;
  return html`
    <td>
      ${line.got} ${!line.ok && html`<strong class="missed">too much</strong>`}
      <span class="soft">${allowed}</span>
    </td>
  `;
}

function errorRow({ over, errors }: ErrorLine): Html {
  return html`<tr><th scope="row">${over}</th>${errors.map(errorCell)}</tr>`;
}

function errorTable({ title, measures, errors }: EvidenceView): Html {
  const table = html`
    <table class="ruled errors">
      <caption>Below each figure what is allowed</caption>
      <thead>
        <tr>
          <th scope="col">Over</th>
          ${measures.map(measure => html`<th scope="col">${measure}</th>`)}
        </tr>
      </thead>
      <tbody>${errors.map(errorRow)}</tbody>
    </table>
  `;
  return scrollFrame(`Errors: ${title}`, table);
}

function evidenceRow({ what, expected, got, within, ok }: EvidenceLine): Html {
  return html`
    <tr>
      <th scope="row">${what}</th>
      <td>${expected}</td>
      <td>${got}</td>
      <td>${within || 'equal'}</td>
      <td>${ok ? 'yes' : html`<strong class="missed">no</strong>`}</td>
    </tr>
  `;
}

function groupBody({ source, lines }: EvidenceGroup): Html {
  return html`
    <tbody>
      <tr class="group">
        <th colspan="5" scope="rowgroup">${source}</th>
      </tr>
      ${lines.map(evidenceRow)}
    </tbody>
  `;
}

function rowsTable({ groups }: EvidenceView): Html {
  return html`
      <table class="proof">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Expected</th>
            <th scope="col">Ours</th>
            <th scope="col">Allowed</th>
            <th scope="col">Within?</th>
          </tr>
        </thead>
        ${groups.map(groupBody)}
      </table>
  `;
}

function notCompared(rows: EvidenceView['notChecked']): Html {
  return html`
    <p>Not compared:</p>
    <ul class="reasons">${rows.map(({ what, why }) => html`<li>${what}: ${why}</li>`)}</ul>
  `;
}

export function evidenceSection(table: EvidenceView): Html {
  const { id, title, about, weak, verdict, errors, groups, notChecked } = table;
  return html`
    <section aria-labelledby="${id}">
      <h2 id="${id}">${title}</h2>
      <details>
        <summary>${groups.length > 0 ? verdict : 'What was compared'}</summary>
        <p>${about}</p>
        ${weak && html`<p><strong>Weak:</strong> ${weak}</p>`}
        ${errors.length > 0 && errorTable(table)}
        ${groups.length > 0 && rowsTable(table)}
        ${notChecked.length > 0 && notCompared(notChecked)}
      </details>
    </section>
  `;
}
