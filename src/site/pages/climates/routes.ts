/** The kinds of climate. */

import { outlooksFor } from '../../../outlooks.ts';
import { climatesPath } from '../../addresses/paths.ts';
import { verdictInputs } from '../../inputs.ts';
import { noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { climatePage } from './climatePage.ts';
import { publishedKinds } from './climates.ts';
import { climatesPage } from './climatesPage.ts';

export function climateRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  const kinds = publishedKinds(all).map(kind =>
    pageRoute(
      kind.path,
      () => verdictInputs(all),
      async () => climatePage(all, kind, await outlooksFor(all), context),
    ),
  );
  return [pageRoute(climatesPath, noInputs, () => climatesPage(all, context)), ...kinds];
}
