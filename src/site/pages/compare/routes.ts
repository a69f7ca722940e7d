/** Comparisons of cultivars, by species and by flavor class, and of those a visitor chooses. */

import { outlooksFor } from '../../../outlooks.ts';
import { comparePath } from '../../addresses/paths.ts';
import { comparedFile } from '../../data/comparedFile.ts';
import { cultivarInputs, stockInputs, verdictInputs } from '../../inputs.ts';
import { pagePath } from '../../parts/paging.ts';
import { jsonRoute, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { compareLists } from './compare.ts';
import { compareListPage, comparePage } from './comparePage.ts';

export function compareRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  const home = async () => (await outlooksFor(all)).get(all.home.id)!;
  const { species, flavor } = compareLists(all);
  const lists = [...species, ...flavor].flatMap(list =>
    list.list.pages.map(page =>
      pageRoute(
        pagePath(list.path, page.number),
        () => verdictInputs(all),
        async () => compareListPage(all, list, page, await home(), context),
      ),
    ),
  );
  // Made for the script of this site; the documented file is cultivars.json.
  const files = all.cultivars.map(entry =>
    jsonRoute(
      `compare/${entry.cultivar.id}.json`,
      () => cultivarInputs(all, entry),
      async () => comparedFile(all, await home(), entry, context.links.href),
    ),
  );
  return [
    pageRoute(
      comparePath,
      () => stockInputs(all),
      () => comparePage(all, context),
    ),
    ...lists,
    ...files,
  ];
}
