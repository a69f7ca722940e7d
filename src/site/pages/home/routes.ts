/** The first page. */

import { stockInputs } from '../../inputs.ts';
import { pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { homePage } from './homePage.ts';

export function homeRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    pageRoute(
      '/',
      () => stockInputs(all),
      () => homePage(all, contextOf(site)),
    ),
  ];
}
