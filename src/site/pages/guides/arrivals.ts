/** What a new tree is in for at a place. */

import { type Day, dayInWords } from '../../../core/days.ts';
import { arrivalCalendarPath } from '../../addresses/guidePaths.ts';
import { type Html, html } from '../../html.ts';
import type { ArrivalViews } from './arrivalViews.ts';
import { taskList } from './tasks.ts';

export interface ArrivalsOptions {
  /** Ids of the guide and of the place. */
  guide: string;
  place: string;
  /** Name of the species whose days they are. */
  species: string;
  asOf: Day;
  href: (path: string) => string;
}

function monthsHtml({ heading, spans }: ArrivalViews['months'][number]): Html {
  const items = spans.map(
    ({ months, words, numbers }) => html`
    <div data-months="${numbers.join(' ')}">
      <dt>${months}</dt>
      <dd>It ${words}.</dd>
    </div>
  `,
  );
  return html`
    <p class="subhead">${heading}</p>
    <dl class="facts">${items}</dl>
  `;
}

export function arrivals(
  { months, shared, forms }: ArrivalViews,
  { guide, place, species, asOf, href }: ArrivalsOptions,
): Html {
  const ofForms = forms.map(
    ({ form, name, because, tasks }) =>
      html`
        <h4 id="${form}">${name}</h4>
        ${taskList(tasks)}${because !== '' && html`<p class="standing unprinted">${because}</p>`}
        <p class="unprinted">
          <a href="${href(arrivalCalendarPath(guide, place, form))}" type="text/calendar">Add all of its first 18 months to your calendar</a>
          (iCalendar file).
        </p>
      `,
  );
  return html`
    <h3 id="by-month">By the month it arrives</h3>
    ${months.map(monthsHtml)}
    <h3 id="day-by-day">If it arrives on ${dayInWords(asOf)}</h3>
    <p>The first days of a new ${species} that will live in the ground where it can.</p>
    ${[taskList(shared), ...ofForms]}
  `;
}
