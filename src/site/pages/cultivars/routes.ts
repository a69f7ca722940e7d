/** The pages of cultivars, and the open file of all of them. */

import { outlooksFor } from '../../../outlooks.ts';
import { cultivarsFile, cultivarsFileSchema } from '../../../outputs/cultivarsFile.ts';
import { cultivarPath } from '../../addresses/paths.ts';
import { cultivarInputs, stockInputs } from '../../inputs.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { cultivarPage } from './cultivarPage.ts';

export function cultivarRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  const pages = all.cultivars.map(entry =>
    pageRoute(
      cultivarPath(entry.cultivar.id),
      () => cultivarInputs(all, entry),
      async () => cultivarPage(all, entry, await outlooksFor(all), context),
    ),
  );
  return [
    ...pages,
    jsonRoute(
      'cultivars.json',
      () => stockInputs(all),
      () => cultivarsFile(all, context.links.absolute),
    ),
    jsonRoute('cultivars.schema.json', noInputs, cultivarsFileSchema),
  ];
}
