/** The tasks of a calendar, each with its days, its cautions, and why and with what it is done. */

import { type Html, html } from '../../html.ts';
import type { TaskView } from './taskView.ts';

/** Which dangers a task has, each leading to the caution in full. */
function careOf(care: TaskView['care']): Html | false {
  const links = care.map(
    ({ title, fragment }, index) => html`${index > 0 && ', '}<a href="${fragment}">${title}</a>`,
  );
  return care.length > 0 && html`<p class="task-care">Take care: ${links}.</p>`;
}

/** What to do and when. */
export function taskWords({ when, from, title, trigger, care }: TaskView): Html {
  return html`
    <p class="when"><time datetime="${from}">${when}</time></p>
    <p><strong>${title}.</strong> ${trigger}</p>
    ${careOf(care)}
  `;
}

function taskItem(task: TaskView): Html {
  const { id, from, to, because, needs } = task;
  return html`
    <li id="${id}" data-from="${from}" data-to="${to}">
      ${taskWords(task)}
      <details>
        <summary>Why</summary>
        <p class="standing">${needs !== null && `${needs} `}${because}</p>
      </details>
    </li>
  `;
}

/** Nothing where there is no task. */
export function taskList(tasks: readonly TaskView[]): Html {
  return tasks.length === 0 ? html`` : html`<ol class="care-tasks">${tasks.map(taskItem)}</ol>`;
}
