/** What a new tree is in for at a place: by the month it arrives in, and day by day if it came on the day of the content. */

import { type CareCalendar, type CareTask, careCalendar } from '../../../core/care/calendar.ts';
import type { CareYear } from '../../../core/care/careYear.ts';
import type { UnitChoice } from '../../../core/care/guideMeasures.ts';
import { tasksOfGuide } from '../../../core/care/taskTable.ts';
import type { Day } from '../../../core/days.ts';
import { type Form, forms } from '../../../core/records/formNames.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import { memoize } from '../../memo.ts';
import { unitsIn } from '../../words/units.ts';
import { formWords } from '../../words/words.ts';
import { type ArrivalSpan, arrivalSpans } from './arrivalMonths.ts';
import { reasonsInUnits, reasonsInWords, type TaskView, taskInUnits, taskView } from './taskView.ts';

/** Forms an arrival guide speaks of; none for other guides. */
export function arrivalForms(guide: Pick<Guide, 'kind' | 'forms'>): readonly Form[] {
  if (guide.kind !== 'arrival') return [];
  return guide.forms.length === 0 ? forms : guide.forms;
}

/** The page of a guide and its files show the same calendars. */
const keptCalendars = memoize((_year: CareYear) => new Map<string, CareCalendar>());

/** The calendar of a tree of a form that arrives on the day of the content and goes into the ground where it can. */
export function arrivalCalendar(
  { asOf }: { readonly asOf: Day },
  { country }: Pick<Place, 'country'>,
  year: CareYear,
  form: Form,
): CareCalendar {
  const ofYear = keptCalendars(year);
  const key = `${form} ${asOf} ${unitsIn(country)}`;
  const kept = ofYear.get(key) ?? newArrival(asOf, unitsIn(country), year, form);
  ofYear.set(key, kept);
  return kept;
}

function newArrival(asOf: Day, units: UnitChoice, year: CareYear, form: Form): CareCalendar {
  const calendar = careCalendar(year, {
    species: year.species,
    form,
    arrives: asOf,
    stage: 'first-winter',
    kept: 'ground',
    potLiters: year.potLiters,
  });
  return {
    ...calendar,
    tasks: calendar.tasks.map(task => taskInUnits(task, units)),
    because: reasonsInUnits(calendar.because, units),
  };
}

export interface ArrivalViews {
  /** By month, for trees in leaf and for leafless ones. */
  months: { heading: string; spans: ArrivalSpan[] }[];
  /** Tasks that are the same for every form. */
  shared: TaskView[];
  forms: {
    form: Form;
    name: string;
    tasks: TaskView[];
    /** Where it will live, and why. */
    because: string;
  }[];
}

const isLeafless = (form: Form) => form !== 'leafed-pot';

function monthsOf(asked: readonly Form[], year: CareYear, asOf: Day): ArrivalViews['months'] {
  const kinds = [
    { heading: 'A tree in leaf', form: asked.find(form => !isLeafless(form)) },
    { heading: 'A leafless tree', form: asked.find(isLeafless) },
  ];
  return kinds.flatMap(({ heading, form }) =>
    form === undefined ? [] : [{ heading, spans: arrivalSpans(year, form, asOf) }],
  );
}

/** Null for guides that are not about arriving. */
export function arrivalViews(
  { asOf, guide }: { readonly asOf: Day; readonly guide: Pick<Guide, 'kind' | 'forms'> },
  place: Pick<Place, 'country'>,
  year: CareYear,
): ArrivalViews | null {
  const asked = arrivalForms(guide);
  if (asked.length === 0) return null;
  const calendars = asked.map(form => {
    const { tasks, because } = arrivalCalendar({ asOf }, place, year, form);
    return { form, because, tasks: tasks.filter(({ name }) => tasksOfGuide.arrival.includes(name)) };
  });
  const same = (a: CareTask, b: CareTask) =>
    a.id === b.id && a.trigger === b.trigger && a.range.from === b.range.from && a.range.to === b.range.to;
  const isShared = (task: CareTask) =>
    calendars.length > 1 && calendars.every(({ tasks }) => tasks.some(other => same(task, other)));
  return {
    months: monthsOf(asked, year, asOf),
    shared: calendars[0]!.tasks.filter(isShared).map(task => taskView(task)),
    forms: calendars.map(({ form, because, tasks }) => ({
      form,
      name: formWords[form],
      tasks: tasks.filter(task => !isShared(task)).map(task => taskView(task, `${form}-`)),
      because: reasonsInWords(because),
    })),
  };
}
