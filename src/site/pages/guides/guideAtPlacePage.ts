/** The page of a guide for a place: its text with the dates of the place, and its calendar. */

import type { CareYear } from '../../../core/care/careYear.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { dayInWords } from '../../../core/days.ts';
import { guidePath, guidesPath, placeCalendarPath, placeGuidePath } from '../../addresses/guidePaths.ts';
import { howWeKnowPath, placePath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { classInWords } from '../../words/placeClasses.ts';
import { unitsIn } from '../../words/units.ts';
import { nameAndWhereabouts, whereabouts } from '../places/place.ts';
import { speciesName } from '../stock/stock.ts';
import { arrivals } from './arrivals.ts';
import { speciesFigures } from './figures.ts';
import { placeGuideLines } from './guideList.ts';
import { type GuideAtPlace, speciesOf } from './guideSubject.ts';
import { type PlaceGuideView, placeGuide } from './guideViews.ts';
import { guideJumps } from './jumps.ts';
import { guideLine } from './line.ts';
import { guideLinks } from './links.ts';
import { nowCard } from './now.ts';
import { speciesTable } from './speciesTable.ts';
import { taskList } from './tasks.ts';

type Href = (path: string) => string;

function about(all: Catalogue, { guide, place, species }: GuideAtPlace, year: CareYear, href: Href): Html {
  const others = html`
    Dates that depend on the species are those of ${speciesName(species)}.
    <a class="unprinted" href="${href(placePath(place.id))}#species-dates">The days of other species</a>
  `;
  const where = whereabouts(place);
  return html`
    <p class="guide-about">
      For <a href="${href(placePath(place.id))}">${place.name}</a>${where !== '' && `, ${where}`}: ${classInWords(year.placeClass)}.
      ${speciesOf(all, guide).length > 1 && others}
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

function calendarSection(
  { asOf }: Catalogue,
  { guide, place, species }: GuideAtPlace,
  view: PlaceGuideView,
  href: Href,
): Html {
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
  const look = { guide: guide.id, place: place.id, species: speciesName(species), asOf, href };
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

function othersSection(all: Catalogue, { guide, place }: GuideAtPlace, href: Href): Html {
  const lines = placeGuideLines(all, place.id, guide.id);
  if (lines.length === 0) return html``;
  return html`
    <section class="unprinted" aria-labelledby="others">
      <h2 id="others">Other guides for ${place.name}</h2>
      ${guideLinks(lines, href)}
    </section>
  `;
}

/** The page of a guide at a place of the catalogue; `year` is that of the species there. */
export function guideAtPlacePage(
  all: Catalogue,
  at: GuideAtPlace,
  year: CareYear,
  { links }: Pick<PageContext, 'links'>,
): Page {
  const { guide, place } = at;
  const { href } = links;
  const general = guidePath(guide.id);
  const view = placeGuide(all, guide, place, year, href);
  const { body, potOnly } = view;
  const figures = speciesTable(guide, speciesOf(all, guide), unitsIn(place.country));
  const above = [
    { path: guidesPath, name: 'Guides' },
    { path: general, name: guide.title },
  ];
  const line = guideLine({ path: general, place, places: `${general}#places` }, href);
  const jumps = guideJumps(body.headings, [{ id: 'calendar', text: 'Calendar' }]);
  // A tree that has just arrived is seen to first; all else goes by the calendar.
  const arriving = guide.kind === 'arrival';
  const calendar = calendarSection(all, at, view, href);
  const text = html`
    <article class="prose guide">${body}</article>
    ${figures && speciesFigures(figures)}
  `;
  const sheet = html`
    <div class="guide-sheet">
      <h1>${guide.title} <span class="kind">${place.name}</span></h1>
      ${[line, nowCard(view, place.name, all.asOf), potOnly && potOnlyNotice(potOnly), about(all, at, year, href), jumps]}
      ${arriving ? [text, calendar] : [calendar, text]}
    </div>
  `;
  return {
    title: `${guide.title}: ${place.name}`,
    description: `${guide.summary} With the dates of ${nameAndWhereabouts(place)}.`,
    path: placeGuidePath(guide.id, place.id),
    canonical: general,
    card: { name: `guide-${guide.id}`, alt: guide.title },
    units: unitsIn(place.country),
    sheet: 'guideSheet',
    styles: ['guidePrint'],
    main: html`${[crumbs(above, place.name, links), sheet, othersSection(all, at, href)]}`,
  };
}
