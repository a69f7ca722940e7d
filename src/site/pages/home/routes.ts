/** The first page. */

import { outlooksFor } from '../../../outlooks.ts';
import { stockInputs, verdictInputs } from '../../inputs.ts';
import { pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { homePage } from './homePage.ts';

export function homeRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    pageRoute(
      '/',
      () => [stockInputs(all), verdictInputs(all)].join(' '),
      async () => homePage(all, (await outlooksFor(all)).get(all.home.id)!, contextOf(site)),
    ),
  ];
}
