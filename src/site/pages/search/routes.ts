/** What the search page loads when it is used. */

import { searchRows } from '../../data/searchRows.ts';
import { stockInputs } from '../../inputs.ts';
import { jsonRoute, type Route } from '../../route.ts';
import type { Site } from '../../site.ts';

export function searchRoutes({ all }: Site): Route[] {
  return [
    jsonRoute(
      'search/rows.json',
      () => stockInputs(all),
      () => searchRows(all),
    ),
  ];
}
