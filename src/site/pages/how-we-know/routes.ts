/** How far the computed figures can be trusted. */

import { evidenceFor } from '../../../content.ts';
import { howWeKnowPath } from '../../addresses/paths.ts';
import { noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { howWeKnowPage } from './howWeKnowPage.ts';

export function howWeKnowRoutes(site: Site): Route[] {
  const { all } = site;
  const make = async () => howWeKnowPage(all, await evidenceFor(all.species), contextOf(site));
  return [pageRoute(howWeKnowPath, noInputs, make)];
}
