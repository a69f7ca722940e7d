/** The pages of lots. */

import { outlooksFor } from '../../../outlooks.ts';
import { lotPath } from '../../addresses/paths.ts';
import { cultivarInputs } from '../../inputs.ts';
import { pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { exampleVerdicts } from '../cultivars/cultivarPlaces.ts';
import { lotPage } from './lotPage.ts';

export function lotRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  return all.lots.map(entry =>
    pageRoute(
      lotPath(entry.lot.id),
      () => cultivarInputs(all, entry),
      async () =>
        lotPage(all, entry, exampleVerdicts(all, await outlooksFor(all), entry.cultivar.id), context),
    ),
  );
}
