/** The open files of places, and the verdicts at each place in the words of its page, for the browser of a visitor who has chosen it. */

import { outlooksFor } from '../../../outlooks.ts';
import { openPlaceFile, placeFileSchema } from '../../../outputs/placeFile.ts';
import { placesFile, placesFileSchema } from '../../../outputs/placesFile.ts';
import { placeFile } from '../../data/file.ts';
import { verdictInputs } from '../../inputs.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { jsonRoute, noInputs, type Route } from '../../route.ts';
import type { Site } from '../../site.ts';
import { sendingRunsTo } from './sending.ts';

function routesOf({ all }: Site, id: string): Route[] {
  const inputs = () => verdictInputs(all);
  return [
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
  return [
    ...site.all.places.flatMap(({ id }) => routesOf(site, id)),
    jsonRoute('places.json', noInputs, () => placesFile(site.all)),
    jsonRoute('places.schema.json', noInputs, placesFileSchema),
    jsonRoute('place.schema.json', noInputs, placeFileSchema),
  ];
}
