/** What changed on the list, as a JSON Feed. */

import { catalogue, changes } from '../content.ts';
import { absolute } from '../href.ts';
import { jsonFeed } from '../outputs/feed.ts';
import { changesFeed } from '../site/pages/changes/changes.ts';

export async function GET(): Promise<Response> {
  const feed = changesFeed(await catalogue(), await changes(), absolute);
  return Response.json(jsonFeed(feed), { headers: { 'Content-Type': 'application/feed+json' } });
}
