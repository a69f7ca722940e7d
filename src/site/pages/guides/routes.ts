/** Guides in general, for one form of one species, and for places, with their calendars: of the guide itself, and of a tree of one form from the day it arrives. */

import { careYears } from '../../../careYears.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import {
  arrivalCalendarPath,
  arrivalPath,
  guidePath,
  guideSheetPath,
  guidesPath,
  placeCalendarPath,
  placeGuidePath,
} from '../../addresses/guidePaths.ts';
import { guideInputs } from '../../inputs.ts';
import { noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { arrivalForms } from './arrivalViews.ts';
import { guideAtPlacePage } from './guideAtPlacePage.ts';
import { arrivalCalendarFile, placeCalendarFile } from './guideFiles.ts';
import { arrivalPage, guidePage } from './guidePage.ts';
import { sentSource } from './guideSources.ts';
import { type GuideAtPlace, guidesAtPlaces, speciesOf } from './guideSubject.ts';
import { guidesPage } from './guidesPage.ts';

async function yearAt(all: Catalogue, { place, species }: GuideAtPlace) {
  return (await careYears(all, species)).get(place.id)!;
}

function routesAt(site: Site, at: GuideAtPlace): Route[] {
  const { all } = site;
  const { guide, place } = at;
  const context = contextOf(site);
  const { links } = context;
  const inputs = () => guideInputs(all);
  const page = pageRoute(placeGuidePath(guide.id, place.id), inputs, async () =>
    guideAtPlacePage(all, at, await yearAt(all, at), context),
  );
  const calendar: Route = {
    file: placeCalendarPath(guide.id, place.id).slice(1),
    inputs,
    make: async () => placeCalendarFile(all, guide, place, await yearAt(all, at), links),
  };
  const arrivals = arrivalForms(guide).map(form => ({
    file: arrivalCalendarPath(guide.id, place.id, form).slice(1),
    inputs,
    make: async () => arrivalCalendarFile(all, guide, place, await yearAt(all, at), form, links),
  }));
  return [page, calendar, ...arrivals];
}

function generalRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  return all.guides.flatMap(guide => [
    pageRoute(
      guidePath(guide.id),
      () => guideInputs(all),
      () => guidePage(all, guide, context),
    ),
    {
      file: guideSheetPath(guide.id).slice(1),
      inputs: () => guideInputs(all),
      make: () => {
        const source = sentSource(all, guide, context.links.href);
        return source === null ? null : JSON.stringify(source);
      },
    },
    ...arrivalForms(guide).flatMap(form =>
      speciesOf(all, guide).map(species =>
        pageRoute(
          arrivalPath(guide.id, form, species.id),
          () => guideInputs(all),
          () => arrivalPage(all, { guide, form, species }, context),
        ),
      ),
    ),
  ]);
}

export function guideRoutes(site: Site): Route[] {
  const list = pageRoute(guidesPath, noInputs, () => guidesPage(site.all, contextOf(site)));
  return [list, ...generalRoutes(site), ...guidesAtPlaces(site.all).flatMap(at => routesAt(site, at))];
}
