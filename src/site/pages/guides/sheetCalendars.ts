/** The calendars of a sheet as iCalendar files. */

import type { CareTask } from '../../../core/care/calendar.ts';
import type { CareYear } from '../../../core/care/careYear.ts';
import type { Form } from '../../../core/records/common.ts';
import { calendarFile } from '../../../outputs/calendarFile.ts';
import { formWords, lowerFirst } from '../../words/words.ts';
import { arrivalCalendar } from './arrivalViews.ts';
import { placeTasks } from './placeSheetView.ts';
import type { SheetPlace, SheetSource } from './sheetSource.ts';

export interface CalendarOf {
  /** Stable name of the place: letters, digits, points and hyphens. */
  readonly placeId: string;
  /** Page the tasks come from; null when it has no address. */
  readonly url: string | null;
}

function fileOf(
  { guide, firstId, namingHost, asOf }: SheetSource,
  { name }: SheetPlace,
  { placeId, url }: CalendarOf,
  tasks: readonly CareTask[],
  form: Form | null,
): string {
  return calendarFile({
    id: [firstId, placeId, ...(form === null ? [] : [form])].join('.'),
    host: namingHost,
    title: form === null ? `${guide.title}, ${name}` : `New tree, ${lowerFirst(formWords[form])}, ${name}`,
    stamp: asOf,
    tasks,
    url,
    alarms: false,
  });
}

/** The tasks of a guide at a place over 18 months; null for a guide without dated tasks, which has no calendar. */
export function sheetCalendar(
  source: SheetSource,
  place: SheetPlace,
  year: CareYear,
  of: CalendarOf,
): string | null {
  const tasks = placeTasks(source, place, year);
  return tasks.length === 0 ? null : fileOf(source, place, of, tasks, null);
}

/** Every task of a tree that arrives on the day of the content, through its second winter. */
export function sheetArrivalCalendar(
  source: SheetSource,
  place: SheetPlace,
  year: CareYear,
  form: Form,
  of: CalendarOf,
): string {
  return fileOf(source, place, of, arrivalCalendar(source, place, year, form).tasks, form);
}
