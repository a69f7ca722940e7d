/** Species and cultivars, for answering a visitor's own freeze dates. */

import { catalogue } from '../../content.ts';
import { treesFile } from '../../site/data/trees.ts';

export async function GET(): Promise<Response> {
  return Response.json(treesFile(await catalogue()));
}
