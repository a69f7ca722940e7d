/** Tasks of a calendar as a page shows them. */

import type { CareTask } from '../../../core/care/calendar.ts';
import { readersUnitFirst, type UnitChoice } from '../../../core/care/guideMeasures.ts';
import { type Day, rangeInWords } from '../../../core/days.ts';
import type { Reason } from '../../../core/records/common.ts';
import { cautionFragment } from '../../../markdown/guideCautions.ts';
import { listInWords, lowerFirst, standingInWords } from '../../words/words.ts';

/** Reasons run on, each with its standing: `Drier roots help the wood ripen (common practice, no source).` */
export function reasonsInWords(because: readonly Reason[]): string {
  return because
    .map(({ text, standing, source }) => `${text.replace(/\.$/, '')} (${standingInWords(standing, source)}).`)
    .join(' ');
}

/** A task whose words give the reader's unit first. */
export function taskInUnits(task: CareTask, units: UnitChoice): CareTask {
  return {
    ...task,
    trigger: readersUnitFirst(task.trigger, units),
    because: reasonsInUnits(task.because, units),
  };
}

export function reasonsInUnits(because: readonly Reason[], units: UnitChoice): Reason[] {
  return because.map(reason => ({ ...reason, text: readersUnitFirst(reason.text, units) }));
}

export interface TaskView {
  /** Fragment of the task on its page. */
  id: string;
  title: string;
  when: string;
  /** First and last day, for machines. */
  from: Day;
  to: Day;
  trigger: string;
  /** The reasons, each with how it is known. */
  because: string;
  needs: string | null;
  /** Its cautions, which the guide has in full, by their fragment. */
  care: { title: string; fragment: string }[];
}

/** A task beside its guide; `prefix` keeps fragments apart where a page has several calendars. */
export function taskView(task: CareTask, prefix = ''): TaskView {
  return {
    id: prefix + task.id,
    title: task.title,
    when: rangeInWords(task.range),
    from: task.range.from,
    to: task.range.to,
    trigger: task.trigger,
    because: reasonsInWords(task.because),
    needs: task.tools.length === 0 ? null : `You need ${listInWords(task.tools)}.`,
    care: task.cautions.map(({ id, title }) => ({
      title: lowerFirst(title),
      fragment: `#${cautionFragment(id)}`,
    })),
  };
}
