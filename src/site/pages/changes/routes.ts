/** What changed on the list, as feeds. */

import { atomFeed, jsonFeed } from '../../../outputs/feed.ts';
import { stockInputs } from '../../inputs.ts';
import type { Route } from '../../route.ts';
import { linksOf, type Site } from '../../site.ts';
import { atomPath, changesFeed, jsonFeedPath } from './changes.ts';

export function changeRoutes(site: Site): Route[] {
  const { all, changes } = site;
  const feed = () => changesFeed(all, changes, linksOf(site).absolute);
  const inputs = () => [changes, stockInputs(all)];
  return [
    { file: atomPath.slice(1), inputs, make: () => atomFeed(feed()) },
    { file: jsonFeedPath.slice(1), inputs, make: () => JSON.stringify(jsonFeed(feed())) },
  ];
}
