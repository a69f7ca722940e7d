/** How to order, and what the list of an order loads. */

import { orderingPath } from '../../addresses/paths.ts';
import { stockInputs } from '../../inputs.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, linksOf, type Site } from '../../site.ts';
import { orderingPage } from './orderingPage.ts';
import { orderFile } from './orderLots.ts';

export function orderingRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    pageRoute(orderingPath, noInputs, () => orderingPage(all, contextOf(site))),
    jsonRoute(
      'ordering/lots.json',
      () => stockInputs(all),
      () => orderFile(all, linksOf(site).absolute),
    ),
  ];
}
