/** The calendars of guides at reference places. */

import type { CareYear } from '../../../core/care/careYear.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Form } from '../../../core/records/common.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import { placeGuidePath } from '../../addresses/guidePaths.ts';
import type { PageContext } from '../../page.ts';
import { firstId, sheetPlace, sheetSource } from './guideSources.ts';
import { type CalendarOf, sheetArrivalCalendar, sheetCalendar } from './sheetCalendars.ts';

type OwnLinks = Pick<PageContext['links'], 'href' | 'absolute'>;

function calendarOf(all: Catalogue, guide: Guide, place: Place, { absolute }: OwnLinks): CalendarOf {
  return {
    placeId: firstId(all, 'place', place.id),
    url: absolute(placeGuidePath(guide.id, place.id)),
  };
}

/** The tasks of a guide at a place over 18 months; null where it has none with a date. */
export function placeCalendarFile(
  all: Catalogue,
  guide: Guide,
  place: Place,
  year: CareYear,
  links: OwnLinks,
): string | null {
  const source = sheetSource(all, guide, links.href)!;
  return sheetCalendar(source, sheetPlace(place), year, calendarOf(all, guide, place, links));
}

/** Every task of a tree that arrives on the day of the content, through its second winter. */
export function arrivalCalendarFile(
  all: Catalogue,
  guide: Guide,
  place: Place,
  year: CareYear,
  form: Form,
  links: OwnLinks,
): string {
  const source = sheetSource(all, guide, links.href)!;
  return sheetArrivalCalendar(source, sheetPlace(place), year, form, calendarOf(all, guide, place, links));
}
