/** Twelve months of a guide at a place as one strip: a row for each task, with today marked. */

import { type Day, dayFromParts, dayParts, daysBetween } from '../../../core/days.ts';
import { type Html, html, safeHtml } from '../../html.ts';
import { shortMonth } from '../../words/yearDays.ts';
import type { TaskView } from './taskView.ts';

/** Days of the strip: twelve months from the first day of the month of the catalogue's day. */
const DAYS = 365;

export interface StripRow {
  title: string;
  /** `November 27, 2026 to March 23, 2027`, each season of the task. */
  when: string;
  /** Days from the left edge, and lengths. */
  bars: { from: number; days: number }[];
}

/** Rows in order of the first day of each task; tasks beyond the twelve months have none. */
export function stripRows(tasks: readonly TaskView[], start: Day): StripRow[] {
  const rows = new Map<string, StripRow>();
  for (const { title, when, from, to } of tasks) {
    const [first, last] = [Math.max(0, daysBetween(start, from)), Math.min(DAYS, daysBetween(start, to) + 1)];
    if (first >= DAYS || last <= 0) continue;
    const row = rows.get(title) ?? { title, when: '', bars: [] };
    rows.set(title, {
      title,
      when: row.when === '' ? when : `${row.when}; ${when}`,
      bars: [...row.bars, { from: first, days: Math.max(3, last - first) }],
    });
  }
  return [...rows.values()];
}

/** Nothing without tasks. The line of today is moved by a script where there is one. */
export function yearStrip(tasks: readonly TaskView[], asOf: Day): Html | false {
  const { year, month } = dayParts(asOf);
  const start = dayFromParts(year, month, 1);
  const rows = stripRows(tasks, start);
  if (rows.length === 0) return false;
  const months = Array.from({ length: 12 }, (_, index) => shortMonth(((month - 1 + index) % 12) + 1));
  const today = daysBetween(start, asOf);
  const items = rows.map(({ title, when, bars }) => {
    const drawn = bars.map(({ from, days }) => `<path d="M${from} 0h${days}v10h${-days}z"/>`).join('');
    return html`
      <li>
        <span>${title}</span>
        <svg viewBox="0 0 ${DAYS} 10" preserveAspectRatio="none" role="img" aria-label="${when}">${safeHtml(drawn)}<rect class="today" x="${today}" width="2" height="10"/></svg>
      </li>
    `;
  });
  return html`
    <div class="year-strip" data-start="${start}">
      <p class="months" aria-hidden="true">${months.map(name => html`<span>${name.charAt(0)}</span>`)}</p>
      <ol>${items}</ol>
    </div>
  `;
}
