/** Guides in general, for one form of one species, and for places, with their calendars: of the guide itself, and of a tree of one form from the day it arrives. */

import { careYears } from '../../../careYears.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import {
  arrivalCalendarPath,
  arrivalPath,
  guidePath,
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
import { type GuideAtPlace, guidesAtPlaces, speciesOf } from './guideSubject.ts';
import { guidesPage } from './guidesPage.ts';
import { placeTasks } from './guideViews.ts';

async function yearAt(all: Catalogue, { place, species }: GuideAtPlace) {
  return (await careYears(all, species)).get(place.id)!;
}

function routesAt(site: Site, at: GuideAtPlace): Route[] {
  const { all } = site;
  const { guide, place } = at;
  const context = contextOf(site);
  const { absolute } = context.links;
  const inputs = () => guideInputs(all);
  const page = pageRoute(placeGuidePath(guide.id, place.id), inputs, async () =>
    guideAtPlacePage(all, at, await yearAt(all, at), context),
  );
  const calendar: Route = {
    file: placeCalendarPath(guide.id, place.id).slice(1),
    inputs,
    async make() {
      const year = await yearAt(all, at);
      // A guide without dated tasks has no calendar.
      if (placeTasks(all, guide, place, year).length === 0) return null;
      return placeCalendarFile(all, guide, place, year, absolute);
    },
  };
  const arrivals = arrivalForms(guide).map(form => ({
    file: arrivalCalendarPath(guide.id, place.id, form).slice(1),
    inputs,
    make: async () => arrivalCalendarFile(all, guide, place, await yearAt(all, at), form, absolute),
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
