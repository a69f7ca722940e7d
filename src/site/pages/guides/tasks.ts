/** The tasks of a calendar, each with its days, why, with what and with which care. */

import { type Html, html } from '../../html.ts';
import type { TaskView } from './taskView.ts';

function careOf(care: TaskView['care']): Html | null {
  if (care.length === 0) return null;
  const links = care.map(
    ({ title, fragment }, index) => html`${index > 0 && ', '}<a href="${fragment}">${title}</a>`,
  );
  return html` Take care: ${links}.`;
}

function taskItem({ id, when, from, title, trigger, because, needs, care }: TaskView): Html {
  const tools = needs === null ? '' : ` ${needs}`;
  return html`
    <li id="${id}">
      <p class="when"><time datetime="${from}">${when}</time></p>
      <p><strong>${title}.</strong> ${trigger}${tools}</p>
      <p class="standing">${because}${careOf(care)}</p>
    </li>
  `;
}

/** Nothing where there is no task. */
export function taskList(tasks: readonly TaskView[]): Html {
  return tasks.length === 0 ? html`` : html`<ol class="care-tasks">${tasks.map(taskItem)}</ol>`;
}
