/** The pages of lots. */

import { lotPath } from '../../addresses/paths.ts';
import { cultivarInputs } from '../../inputs.ts';
import { pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { lotPage } from './lotPage.ts';

export function lotRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  return all.lots.map(entry =>
    pageRoute(
      lotPath(entry.lot.id),
      () => cultivarInputs(all, entry),
      () => lotPage(all, entry, context),
    ),
  );
}
