/** The choice of a place, and what it loads: species and cultivars, where parcels leave from, and ZIP code areas and climates for finding the nearest place. */

import { zipAreas } from '../../../zipAreas.ts';
import { myPlacePath } from '../../addresses/paths.ts';
import { climatesFile, homeFile } from '../../data/town.ts';
import { treesFile } from '../../data/trees.ts';
import { whereFile } from '../../data/where.ts';
import { stockInputs } from '../../inputs.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { myPlacePage } from './myPlacePage.ts';

export function myPlaceRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    pageRoute(myPlacePath, noInputs, () => myPlacePage(all, contextOf(site))),
    jsonRoute(
      'my-place/trees.json',
      () => stockInputs(all),
      () => treesFile(all),
    ),
    jsonRoute('my-place/home.json', noInputs, () => homeFile(all)),
    jsonRoute('my-place/climates.json', noInputs, () => climatesFile(all)),
    jsonRoute('my-place/where.json', noInputs, async () => whereFile(all, await zipAreas())),
  ];
}
