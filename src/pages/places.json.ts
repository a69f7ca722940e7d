/** The open file of places. */

import { catalogue } from '../content.ts';
import { placesFile } from '../outputs/placesFile.ts';

export async function GET(): Promise<Response> {
  return Response.json(placesFile(await catalogue()));
}
