/** The tasks of a calendar as HTML, each with its days, why, with what and with which care. */

import { type Html, html } from '../html.ts';
import type { TaskView } from './taskView.ts';

function careOf(care: TaskView['care']): Html | null {
  if (care.length === 0) return null;
  const links = care.map(
    ({ title, fragment }, index) => html`${index > 0 && ', '}<a href="${fragment}">${title}</a>`,
  );
  return html` Take care: ${links}.`;
}

function taskHtml({ id, when, from, title, trigger, because, needs, care }: TaskView): Html {
  const tools = needs === null ? '' : ` ${needs}`;
  return html`<li id="${id}"><p class="when"><time datetime="${from}">${when}</time></p>
<p><strong>${title}.</strong> ${trigger}${tools}</p>
<p class="standing">${because}${careOf(care)}</p></li>
`;
}

export function tasksHtml(tasks: readonly TaskView[]): string {
  return html`<ol class="care-tasks">${tasks.map(taskHtml)}</ol>`.html;
}
