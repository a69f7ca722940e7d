/** What changed on the list, as a page and as feeds. */

import { atomFeed, jsonFeed } from '../../../outputs/feed.ts';
import { changesPath } from '../../addresses/paths.ts';
import { stockInputs } from '../../inputs.ts';
import { pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { atomPath, changesFeed, jsonFeedPath } from './changes.ts';
import { changesPage } from './changesPage.ts';

export function changeRoutes(site: Site): Route[] {
  const { all, changes } = site;
  const context = contextOf(site);
  const feed = () => changesFeed(all, changes, context.links.absolute);
  const inputs = () => [changes, stockInputs(all)];
  return [
    pageRoute(changesPath, inputs, () => changesPage(all, changes, context)),
    { file: atomPath.slice(1), inputs, make: () => atomFeed(feed()) },
    { file: jsonFeedPath.slice(1), inputs, make: () => JSON.stringify(jsonFeed(feed())) },
  ];
}
