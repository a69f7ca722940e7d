/** JSON Schema of the open file of one place. */

import { placeFileSchema } from '../outputs/placeFile.ts';

export function GET(): Response {
  return Response.json(placeFileSchema());
}
