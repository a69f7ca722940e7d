/** What a guide asks for now at a place: the next tasks, or what a tree that arrives this month is in for, and the year as a strip. */

import { type Day, dayInWords, dayParts } from '../../../core/days.ts';
import { type Html, html } from '../../html.ts';
import { nextTasks } from './nextTasks.ts';
import type { PlaceGuideView } from './placeSheetView.ts';
import { taskWords } from './tasks.ts';
import { yearStrip } from './yearStrip.ts';

function arrivingNow({ months }: NonNullable<PlaceGuideView['arrivals']>, asOf: Day): Html {
  const { month } = dayParts(asOf);
  const items = months.map(({ heading, spans }) => {
    const span = spans.find(({ numbers }) => numbers.includes(month));
    return html`
      <div>
        <dt>${heading}</dt>
        <dd data-now-arrival>It ${span?.words ?? ''}.</dd>
      </div>
    `;
  });
  return html`<dl class="facts">${items}</dl>`;
}

/** The card at the top of a guide for a place; nothing where no task has a date. `asOf` is the day it is made for. */
export function nowCard(
  { tasks, arrivals }: Pick<PlaceGuideView, 'tasks' | 'arrivals'>,
  placeName: string,
  asOf: Day,
): Html | false {
  if (arrivals === null && tasks.length === 0) return false;
  const items = nextTasks(tasks, asOf).map(task => html`<li>${taskWords(task)}</li>`);
  const asked =
    arrivals === null
      ? html`<ol class="care-tasks" data-now-tasks>${items}</ol>`
      : arrivingNow(arrivals, asOf);
  return html`
    <section class="guide-now" aria-labelledby="now" data-now="${asOf}">
      <h2 id="now">${arrivals === null ? 'Now' : 'Arriving now'} in ${placeName}</h2>
      <p class="as-of" data-now-day>${dayInWords(asOf)}</p>
      ${asked}
      ${yearStrip(tasks, asOf)}
    </section>
  `;
}
