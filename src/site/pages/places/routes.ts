/** The pages of places, their open files, and the verdicts at each in the words of its page, for the browser of a visitor who has chosen it. */

import { careYears } from '../../../careYears.ts';
import type { Place } from '../../../core/records/place.ts';
import { grownSpecies, outlooksFor } from '../../../outlooks.ts';
import { openPlaceFile, placeFileSchema } from '../../../outputs/placeFile.ts';
import { placesFile, placesFileSchema } from '../../../outputs/placesFile.ts';
import { placePath, placesPath } from '../../addresses/paths.ts';
import { placeFile } from '../../data/file.ts';
import { placeInputs, verdictInputs } from '../../inputs.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { placePage } from './placePage.ts';
import { placesPage } from './placesPage.ts';
import { sendingRunsTo } from './sending.ts';

async function pageOf(site: Site, place: Place) {
  const { all } = site;
  const years = grownSpecies(all).map(async species => (await careYears(all, species)).get(place.id)!);
  const known = { outlooks: await outlooksFor(all), careYears: await Promise.all(years) };
  return placePage(all, place, known, contextOf(site));
}

function routesOf(site: Site, place: Place): Route[] {
  const { all } = site;
  const { id } = place;
  const inputs = () => verdictInputs(all);
  return [
    pageRoute(
      placePath(id),
      () => placeInputs(all),
      () => pageOf(site, place),
    ),
    jsonRoute(`places/${id}.json`, inputs, async () => {
      const found = await outlooksFor(all);
      const answers = found.get(id)!;
      const matches = listedCultivars(all).map(({ cultivar }) => answers.match(cultivar));
      return openPlaceFile(all, answers.place, matches, sendingRunsTo(all, found, answers));
    }),
    jsonRoute(`places/${id}/verdicts.json`, inputs, async () => {
      const found = await outlooksFor(all);
      return placeFile(all, found, found.get(id)!);
    }),
  ];
}

export function placeRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    ...all.places.flatMap(place => routesOf(site, place)),
    pageRoute(
      placesPath,
      () => placeInputs(all),
      () => placesPage(all, contextOf(site)),
    ),
    jsonRoute('places.json', noInputs, () => placesFile(all)),
    jsonRoute('places.schema.json', noInputs, placesFileSchema),
    jsonRoute('place.schema.json', noInputs, placeFileSchema),
  ];
}
