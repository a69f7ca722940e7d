/** What the search page loads when it is used. */

import { catalogue } from '../../content.ts';
import { searchRows } from '../../site/data/searchRows.ts';

export async function GET(): Promise<Response> {
  return Response.json(searchRows(await catalogue()));
}
