/** What changed on the list, as an Atom feed. */

import { catalogue, changes } from '../content.ts';
import { absolute } from '../href.ts';
import { atomFeed } from '../outputs/feed.ts';
import { changesFeed } from '../site/pages/changes/changes.ts';

export async function GET(): Promise<Response> {
  const feed = changesFeed(await catalogue(), await changes(), absolute);
  return new Response(atomFeed(feed), { headers: { 'Content-Type': 'application/atom+xml' } });
}
