/** How and when trees of each form are sent to a place. */

import { orderingPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import { toldHtml } from '../../parts/told.ts';
import type { FormTravelView, SendingView, TravelView } from './sending.ts';

function formFact({ formName, words, more }: FormTravelView): Html {
  return html`
    <div>
      <dt>${formName}</dt>
      <dd><strong>${words}.</strong> ${more}</dd>
    </div>
  `;
}

function weeksOfForm({ formName, runs }: SendingView['table'][number]): Html {
  const rows = runs.map(({ days, words }, index) => {
    const head = index === 0 && html`<th scope="rowgroup" rowspan="${runs.length}">${formName}</th>`;
    return html`<tr>${head}<td>${days}</td><td>${words}</td></tr>`;
  });
  const none = html`
    <tr>
      <th scope="row">${formName}</th>
      <td colspan="2">in no week of the coming year</td>
    </tr>
  `;
  return html`<tbody>${rows.length === 0 ? none : rows}</tbody>`;
}

function weeksTable(table: SendingView['table'], name: string): Html {
  return html`
    <table class="ruled weeks">
      <caption>Weeks of the coming year in which trees are sent to ${name}, judged by the weather at both ends</caption>
      <thead>
        <tr>
          <th scope="col">Form</th>
          <th scope="col">From Monday to Sunday</th>
          <th scope="col">How</th>
        </tr>
      </thead>
      ${table.map(weeksOfForm)}
    </table>
  `;
}

function reasons(now: TravelView): Html[] {
  if (!now.route) return [toldHtml(now.because, [])];
  return now.forms.map(({ formName, because }) => html`<h3>${formName}</h3>${toldHtml(because, [])}`);
}

/** `name` is that of the place. */
export function sendingSection(
  { now, table }: SendingView,
  name: string,
  href: (path: string) => string,
): Html {
  const weeks =
    now.route &&
    html`
      <dl class="facts">${now.forms.map(formFact)}</dl>
      <p>Be in to take the parcel indoors the same day, or have it held at the depot: one freezing night on a porch can undo three mild days.</p>
      <details>
        <summary>Week by week</summary>
        ${scrollFrame('Table of sending weeks', weeksTable(table, name))}
      </details>
    `;
  return html`
    <section class="stacked" aria-labelledby="sending">
      <h2 id="sending">When a tree can travel here</h2>
      ${weeks || html`<p><strong>We do not send there.</strong></p>`}
      <details>
        <summary>Why</summary>
        ${reasons(now)}
        <p>
          Open: nine trips in ten keep to our limits. By forecast: three or more do, and we wait for a mild spell.
          <a href="${href(orderingPath)}">How to order, and our limits</a>
        </p>
      </details>
    </section>
  `;
}
