/** What the choice of a place loads: species and cultivars for a visitor's own freeze dates, and ZIP code areas for finding the nearest place. */

import { zipAreas } from '../../../zipAreas.ts';
import { treesFile } from '../../data/trees.ts';
import { whereFile } from '../../data/where.ts';
import { stockInputs } from '../../inputs.ts';
import { jsonRoute, noInputs, type Route } from '../../route.ts';
import type { Site } from '../../site.ts';

export function myPlaceRoutes({ all }: Site): Route[] {
  return [
    jsonRoute(
      'my-place/trees.json',
      () => stockInputs(all),
      () => treesFile(all),
    ),
    jsonRoute('my-place/where.json', noInputs, async () => whereFile(all, await zipAreas())),
  ];
}
