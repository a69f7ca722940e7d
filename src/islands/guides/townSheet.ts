/** The sheet of a guide for a town, and its calendars, worked out in the browser by the same functions that the build uses for reference places. */

import { type CareSummary, type CareYear, careYear } from '../../core/care/careYear.ts';
import { USUAL_POT_LITERS } from '../../core/care/plantInCare.ts';
import type { WeatherYears } from '../../core/climate/weatherYears.ts';
import { arrivalCalendarPath, placeCalendarPath } from '../../site/addresses/guidePaths.ts';
import { html } from '../../site/html.ts';
import { arrivalForms } from '../../site/pages/guides/arrivalViews.ts';
import { guideSheet } from '../../site/pages/guides/guideSheet.ts';
import { sheetArrivalCalendar, sheetCalendar } from '../../site/pages/guides/sheetCalendars.ts';
import { datedSpecies, type SheetPlace, type SheetSource } from '../../site/pages/guides/sheetSource.ts';

/** The weather years of a place, and what else its care hangs on. */
export interface SheetWeather {
  readonly years: WeatherYears;
  readonly summary: CareSummary;
}

/** The year of the species whose dates the guide gives. */
export function sheetYear(source: SheetSource, { id, name }: SheetPlace, weather: SheetWeather): CareYear {
  return careYear({ id, name, ...weather }, datedSpecies(source), USUAL_POT_LITERS);
}

/** The HTML of the sheet, without the line that leads to other places. */
export function townSheet(
  source: SheetSource,
  place: SheetPlace,
  year: CareYear,
  href: (path: string) => string,
): string {
  return guideSheet(source, place, year, { line: html``, href, trees: null }).html;
}

interface TownCalendar {
  /** Path of the built file that the sheet links to. */
  readonly path: string;
  /** What it is about, for the name of a file. */
  readonly name: string;
  readonly text: string;
}

/** Every calendar of the sheet, by the path of the built file in whose place it stands. */
export function townCalendars(
  source: SheetSource,
  place: SheetPlace,
  year: CareYear,
  of: { readonly placeId: string; readonly url: string | null },
): TownCalendar[] {
  const { guide } = source;
  const dated = sheetCalendar(source, place, year, of);
  const forms = arrivalForms(guide).map(form => ({
    path: arrivalCalendarPath(guide.id, place.id, form),
    name: `${guide.id}-${form}`,
    text: sheetArrivalCalendar(source, place, year, form, of),
  }));
  return [
    ...(dated === null ? [] : [{ path: placeCalendarPath(guide.id, place.id), name: guide.id, text: dated }]),
    ...forms,
  ];
}
