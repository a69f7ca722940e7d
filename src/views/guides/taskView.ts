/** Tasks of a calendar as a page shows them. */

import type { CareTask } from '../../core/care/calendar.ts';
import type { Caution } from '../../core/care/cautions.ts';
import { rangeInWords } from '../../core/days.ts';
import { cautionFragment } from '../../markdown/guideParts.ts';
import { lowerFirst, standingInWords } from '../words.ts';

export interface TaskView {
  /** Fragment of the task on its page. */
  id: string;
  title: string;
  when: string;
  /** First day, for machines. */
  from: string;
  trigger: string;
  /** Each reason with how it is known. */
  because: { text: string; known: string }[];
  needs: string | null;
  /** Cautions the guide has in full, by their fragment. */
  care: { title: string; fragment: string }[];
  /** Cautions it does not have. */
  careInFull: { title: string; text: string }[];
}

/** A task beside a guide that shows `inGuide` in full; `prefix` keeps fragments apart where a page has several calendars. */
export function taskView(task: CareTask, inGuide: readonly Caution[], prefix = ''): TaskView {
  const shown = new Set(inGuide.map(({ id }) => id));
  return {
    id: prefix + task.id,
    title: task.title,
    when: rangeInWords(task.range),
    from: task.range.from,
    trigger: task.trigger,
    because: task.because.map(({ text, standing, source }) => ({
      text,
      known: standingInWords(standing, source),
    })),
    needs: task.tools.length === 0 ? null : `You need ${task.tools.join(', ')}.`,
    care: task.cautions
      .filter(({ id }) => shown.has(id))
      .map(({ id, title }) => ({ title: lowerFirst(title), fragment: `#${cautionFragment(id)}` })),
    careInFull: task.cautions.filter(({ id }) => !shown.has(id)).map(({ title, text }) => ({ title, text })),
  };
}
