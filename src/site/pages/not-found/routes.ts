/** The page that hosts show for an address that leads nowhere. */

import { noInputs, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { notFoundPage } from './notFoundPage.ts';

export function notFoundRoutes(site: Site): Route[] {
  return [{ file: '404.html', inputs: noInputs, make: () => notFoundPage(contextOf(site)) }];
}
