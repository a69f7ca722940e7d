/** The page of a guide for a place: its text with the dates of the place, and its calendar. */

import type { CareYear } from '../../../core/care/careYear.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { guideTrees } from '../../../markdown/guideParts.ts';
import { guidePath, guidesPath, placeGuidePath } from '../../addresses/guidePaths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { unitsIn } from '../../words/units.ts';
import { nameAndWhereabouts } from '../places/place.ts';
import { placeGuideLines } from './guideList.ts';
import { guideSheet } from './guideSheet.ts';
import { sheetPlace, sheetSource } from './guideSources.ts';
import type { GuideAtPlace } from './guideSubject.ts';
import { guideLine } from './line.ts';
import { guideLinks } from './links.ts';

type Href = (path: string) => string;

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
  const above = [
    { path: guidesPath, name: 'Guides' },
    { path: general, name: guide.title },
  ];
  const line = guideLine({ path: general, place, places: `${general}#places` }, href);
  const source = sheetSource(all, guide, href)!;
  const written = guideSheet(source, sheetPlace(place), year, { line, href, trees: guideTrees(guide, href) });
  const sheet = html`<div class="guide-sheet">${written}</div>`;
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
