/** The sheet of a guide for a place: the text with the dates of the place, its calendar, and what is to be done now. Made by the build for reference places, and in a browser for a town. */

import type { CareYear } from '../../../core/care/careYear.ts';
import { dayInWords } from '../../../core/days.ts';
import type { TreeHand } from '../../../markdown/guideWriter.ts';
import { placeCalendarPath } from '../../addresses/guidePaths.ts';
import { howWeKnowPath, placePath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import { classInWords } from '../../words/placeClasses.ts';
import { speciesName } from '../../words/speciesName.ts';
import { unitsIn } from '../../words/units.ts';
import { arrivals } from './arrivals.ts';
import { speciesFigures } from './figures.ts';
import { guideJumps } from './jumps.ts';
import { nowCard } from './now.ts';
import { type PlaceGuideView, placeGuide } from './placeSheetView.ts';
import { datedSpecies, type SheetPlace, type SheetSource, sheetSpecies } from './sheetSource.ts';
import { speciesTable } from './speciesTable.ts';
import { taskList } from './tasks.ts';

type Href = (path: string) => string;

function about(source: SheetSource, place: SheetPlace, year: CareYear, href: Href): Html {
  const { id, name, where, hasPage } = place;
  const days = html` <a class="unprinted" href="${href(placePath(id))}#species-dates">The days of other species</a>`;
  const others = html`
    Dates that depend on the species are those of ${speciesName(datedSpecies(source))}.${hasPage && days}
  `;
  const named = hasPage ? html`<a href="${href(placePath(id))}">${name}</a>` : html`${name}`;
  return html`
    <p class="guide-about">
      For ${named}${where !== '' && `, ${where}`}: ${classInWords(year.placeClass)}.
      ${sheetSpecies(source).length > 1 && others}
    </p>
  `;
}

function potOnlyNotice({ words, known }: NonNullable<PlaceGuideView['potOnly']>): Html {
  return html`
    <div class="notice">
      <p><strong>${words}</strong></p>
      <p class="standing">${known}</p>
    </div>
  `;
}

function calendarSection(source: SheetSource, place: SheetPlace, view: PlaceGuideView, href: Href): Html {
  const { asOf, guide } = source;
  const dated = html`
    <p>
      For 18 months from ${dayInWords(asOf)}, drawn from simulated years of this climate.
      <span class="unprinted">
        <a href="${href(howWeKnowPath)}">How far they can be trusted</a>.
        <a href="${href(placeCalendarPath(guide.id, place.id))}" type="text/calendar">Add it to your calendar</a> (iCalendar file).
      </span>
    </p>
    ${taskList(view.tasks)}
  `;
  const look = { guide: guide.id, place: place.id, species: speciesName(datedSpecies(source)), asOf, href };
  return html`
    <section class="guide-calendar" aria-labelledby="calendar">
      <h2 id="calendar">Calendar for ${place.name}</h2>
      ${[
        view.withoutDates !== null && html`<p>${view.withoutDates}</p>`,
        view.tasks.length > 0 && dated,
        view.arrivals && arrivals(view.arrivals, look),
      ]}
    </section>
  `;
}

interface SheetLook {
  /** The line that leads to the versions for other places. */
  line: Html;
  href: Href;
  /** As in `writeGuide`. */
  trees: TreeHand | null;
}

/** What stands in the sheet. `year` is that of the species whose dates are given, at the place. */
export function guideSheet(
  source: SheetSource,
  place: SheetPlace,
  year: CareYear,
  { line, href, trees }: SheetLook,
): Html {
  const { guide, asOf } = source;
  const view = placeGuide(source, place, year, trees);
  const { body, potOnly } = view;
  const figures = speciesTable(source.figures, sheetSpecies(source), unitsIn(place.country));
  const jumps = guideJumps(body.headings, [{ id: 'calendar', text: 'Calendar' }]);
  // A tree that has just arrived is seen to first; all else goes by the calendar.
  const arriving = guide.kind === 'arrival';
  const calendar = calendarSection(source, place, view, href);
  const text = html`
    <article class="prose guide">${body}</article>
    ${figures && speciesFigures(figures)}
  `;
  return html`
    <h1>${guide.title} <span class="kind">${place.name}</span></h1>
    ${[line, nowCard(view, place.name, asOf), potOnly && potOnlyNotice(potOnly), about(source, place, year, href), jumps]}
    ${arriving ? [text, calendar] : [calendar, text]}
  `;
}
