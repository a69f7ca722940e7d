/** The fruit year of every place. */

import { outlooksFor } from '../../../outlooks.ts';
import { fruitYearPath } from '../../addresses/paths.ts';
import { verdictInputs } from '../../inputs.ts';
import { pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { fruitYearPage } from './fruitYearPage.ts';

export function fruitYearRoutes(site: Site): Route[] {
  const { all } = site;
  return all.places.map(({ id }) =>
    pageRoute(
      fruitYearPath(id),
      () => verdictInputs(all),
      async () => fruitYearPage(all, (await outlooksFor(all)).get(id)!, contextOf(site)),
    ),
  );
}
