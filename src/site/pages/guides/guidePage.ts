/** A guide that is for no place: for any reader, and for one form of one species, where the pages of lots and cultivars lead. */

import { placesPart } from '../../../core/care/guideHeadings.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Form } from '../../../core/records/common.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Species } from '../../../core/records/species.ts';
import { arrivalPath, guidePath, guidesPath } from '../../addresses/guidePaths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { movedPartLines } from '../../parts/movedParts.ts';
import { seenInVideos } from '../../parts/seenIn.ts';
import { speciesName } from '../../words/speciesName.ts';
import { unitsIn } from '../../words/units.ts';
import { formMeanings, formWords, lowerFirst } from '../../words/words.ts';
import { seenIn } from '../videos/seenIn.ts';
import { speciesFigures } from './figures.ts';
import { guidePlaces } from './guideList.ts';
import { speciesOf } from './guideSubject.ts';
import { formGuide, generalGuide, movedParts } from './guideViews.ts';
import { guideJumps } from './jumps.ts';
import { guideLine } from './line.ts';
import { quotedFigures } from './quotedFigures.ts';
import { speciesTable } from './speciesTable.ts';

type Href = (path: string) => string;

const placesJump = { id: placesPart, text: 'With the dates of your place' };

/** Every place a guide can be read for; `fragment` is the part of those pages that the links lead to. */
function placesSection(all: Catalogue, guide: Guide, fragment: string, href: Href): Html {
  const groups = guidePlaces(all, guide).map(({ heading, links }) => {
    const items = links.map(
      ({ path, name }) => html`<li><a href="${href(path)}${fragment}">${name}</a></li>`,
    );
    return html`
      <details>
        <summary>${heading}</summary>
        <ul class="columns">${items}</ul>
      </details>
    `;
  });
  return html`
    <section class="guide-places" aria-labelledby="${placesPart}">
      <h2 id="${placesPart}">With the dates of your place</h2>
      <p>
        Choose the place nearest to you and at about your elevation. The guide then gives its own dates and leaves out what cannot
        happen there.
      </p>
      ${groups}
    </section>
  `;
}

/** A guide for any reader. */
export function guidePage(all: Catalogue, guide: Guide, { links }: PageContext): Page {
  const { href } = links;
  const path = guidePath(guide.id);
  const text = generalGuide(all, guide, href);
  const figures = speciesTable(quotedFigures(guide), speciesOf(all, guide), unitsIn(all.home.country));
  return {
    title: guide.title,
    description: guide.summary,
    path,
    card: { name: `guide-${guide.id}`, alt: guide.title },
    sheet: 'guideSheet',
    styles: ['guidePrint'],
    main: html`
      ${crumbs([{ path: guidesPath, name: 'Guides' }], guide.title, links)}
      <h1>${guide.title}</h1>
      <p class="standfirst">${guide.summary}</p>
      ${guideLine({ path, place: null, places: `#${placesPart}` }, href)}
      ${guideJumps(text.headings, [placesJump])}
      <article class="prose guide">${text}</article>
      ${movedPartLines(movedParts(all, guide, text), links)}
      ${figures && speciesFigures(figures)}
      ${seenInVideos(seenIn(all, 'guide', guide.id), href)}
      ${placesSection(all, guide, '', href)}
    `,
  };
}

export interface ArrivalSubject {
  guide: Guide;
  form: Form;
  species: Species;
}

/** The arrival guide for one form of one species. */
export function arrivalPage(
  all: Catalogue,
  { guide, form, species }: ArrivalSubject,
  { links }: PageContext,
): Page {
  const { href } = links;
  const path = arrivalPath(guide.id, form, species.id);
  const general = guidePath(guide.id);
  const text = formGuide(all, guide, form, species, href);
  const about = `${speciesName(species)}, ${lowerFirst(formWords[form])}`;
  const above = [
    { path: guidesPath, name: 'Guides' },
    { path: general, name: guide.title },
  ];
  return {
    title: `${guide.title}: ${about}`,
    description: `${guide.summary} For ${about}.`,
    path,
    canonical: general,
    card: { name: `guide-${guide.id}`, alt: guide.title },
    sheet: 'guideSheet',
    styles: ['guidePrint'],
    main: html`
      ${crumbs(above, about, links)}
      <h1>${guide.title} <span class="kind">${about}</span></h1>
      <p class="standfirst">${formMeanings[form]}</p>
      ${guideLine({ path, place: null, places: `#${placesPart}` }, href)}
      ${guideJumps(text.headings, [placesJump])}
      <article class="prose guide">${text}</article>
      ${placesSection(all, guide, `#${form}`, href)}
    `,
  };
}
