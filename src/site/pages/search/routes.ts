/** The search page, and what it loads when it is used. */

import { searchPath } from '../../addresses/paths.ts';
import { searchRows } from '../../data/searchRows.ts';
import { stockInputs } from '../../inputs.ts';
import { jsonRoute, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { searchPage } from './searchPage.ts';

export function searchRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    pageRoute(
      searchPath,
      () => stockInputs(all),
      () => searchPage(all, contextOf(site)),
    ),
    jsonRoute(
      'search/rows.json',
      () => stockInputs(all),
      () => searchRows(all),
    ),
  ];
}
