/** The pages of cultivars, their lists, and the open file of all of them. */

import { outlooksFor } from '../../../outlooks.ts';
import { cultivarsFile, cultivarsFileSchema } from '../../../outputs/cultivarsFile.ts';
import { cultivarPath, cultivarsPath } from '../../addresses/paths.ts';
import { cultivarInputs, stockInputs } from '../../inputs.ts';
import { pagePath } from '../../parts/paging.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { cultivarList, flavorLists, ripeningLists } from './cultivar.ts';
import { cultivarListPage, traitListPage } from './cultivarListPage.ts';
import { cultivarPage } from './cultivarPage.ts';

function listRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  const inputs = () => stockInputs(all);
  const whole = cultivarList(all).pages.map(page =>
    pageRoute(pagePath(cultivarsPath, page.number), inputs, () => cultivarListPage(all, page, context)),
  );
  const byTrait = [...flavorLists(all), ...ripeningLists(all)].flatMap(trait =>
    trait.list.pages.map(page =>
      pageRoute(pagePath(trait.path, page.number), inputs, () => traitListPage(all, trait, page, context)),
    ),
  );
  return [...whole, ...byTrait];
}

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
    ...listRoutes(site),
    ...pages,
    jsonRoute(
      'cultivars.json',
      () => stockInputs(all),
      () => cultivarsFile(all, context.links.absolute),
    ),
    jsonRoute('cultivars.schema.json', noInputs, cultivarsFileSchema),
  ];
}
