/** Guides for places, with their calendars: of the guide itself, and of a tree of one form from the day it arrives. */

import { careYears } from '../../../careYears.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { arrivalCalendarPath, placeCalendarPath, placeGuidePath } from '../../addresses/guidePaths.ts';
import { guideInputs } from '../../inputs.ts';
import { pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { arrivalForms } from './arrivalViews.ts';
import { arrivalCalendarFile, placeCalendarFile } from './guideFiles.ts';
import { guidePage } from './guidePage.ts';
import { type GuideAtPlace, guidesAtPlaces } from './guideSubject.ts';
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
    guidePage(all, at, await yearAt(all, at), context),
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

export function guideRoutes(site: Site): Route[] {
  return guidesAtPlaces(site.all).flatMap(at => routesAt(site, at));
}
