/** JSON Schema of the open file of places. */

import { placesFileSchema } from '../outputs/placesFile.ts';

export function GET(): Response {
  return Response.json(placesFileSchema());
}
