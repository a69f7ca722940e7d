/** The calendars of guides as iCalendar files. */

import { type RecordKind, recordAddress, recordOf } from '../../../core/addresses/paths.ts';
import type { CareTask } from '../../../core/care/calendar.ts';
import type { CareYear } from '../../../core/care/careYear.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Form } from '../../../core/records/common.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import { calendarFile } from '../../../outputs/calendarFile.ts';
import { placeGuidePath } from '../../addresses/guidePaths.ts';
import { formWords, lowerFirst } from '../../words/words.ts';
import { arrivalCalendar } from './arrivalViews.ts';
import { placeTasks } from './guideViews.ts';

type Link = (path: string) => string;

interface About {
  guide: Guide;
  place: Place;
  tasks: readonly CareTask[];
  /** Told apart from other calendars of the guide at the place. */
  form: Form | null;
}

/** The id a record was first published with: a calendar that knows an event by it does not take it for a new one after a rename. */
function firstId({ firstAddresses }: Catalogue, kind: RecordKind, id: string): string {
  const first = firstAddresses.get(recordAddress(kind, id));
  return (first === undefined ? null : recordOf(first)?.id) ?? id;
}

function fileOf(all: Catalogue, { guide, place, tasks, form }: About, absolute: Link): string {
  const { asOf } = all;
  const names = [firstId(all, 'guide', guide.id), firstId(all, 'place', place.id)];
  return calendarFile({
    id: [...names, ...(form === null ? [] : [form])].join('.'),
    host: all.namingHost,
    title:
      form === null
        ? `${guide.title}, ${place.name}`
        : `New tree, ${lowerFirst(formWords[form])}, ${place.name}`,
    stamp: asOf,
    tasks,
    url: absolute(placeGuidePath(guide.id, place.id)),
    alarms: false,
  });
}

/** The tasks of a guide at a place over 18 months. */
export function placeCalendarFile(
  all: Catalogue,
  guide: Guide,
  place: Place,
  year: CareYear,
  absolute: Link,
): string {
  return fileOf(all, { guide, place, tasks: placeTasks(all, guide, place, year), form: null }, absolute);
}

/** Every task of a tree that arrives on the day of the content, through its second winter. */
export function arrivalCalendarFile(
  all: Catalogue,
  guide: Guide,
  place: Place,
  year: CareYear,
  form: Form,
  absolute: Link,
): string {
  const { tasks } = arrivalCalendar(all, place, year, form);
  return fileOf(all, { guide, place, tasks, form }, absolute);
}
