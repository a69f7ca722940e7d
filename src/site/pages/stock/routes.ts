/** The open stock file. */

import { stockFile, stockFileSchema } from '../../../outputs/stockFile.ts';
import { stockInputs } from '../../inputs.ts';
import { runsFromHome } from '../../parts/sentNow.ts';
import { jsonRoute, noInputs, type Route } from '../../route.ts';
import { linksOf, type Site } from '../../site.ts';

export function stockRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    jsonRoute(
      'stock.json',
      () => stockInputs(all),
      () => stockFile(all, linksOf(site).absolute, runsFromHome(all)),
    ),
    jsonRoute('stock.schema.json', noInputs, stockFileSchema),
  ];
}
