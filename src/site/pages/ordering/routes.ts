/** How to order. */

import { orderingPath } from '../../addresses/paths.ts';
import { noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { orderingPage } from './orderingPage.ts';

export function orderingRoutes(site: Site): Route[] {
  return [pageRoute(orderingPath, noInputs, () => orderingPage(site.all, contextOf(site)))];
}
