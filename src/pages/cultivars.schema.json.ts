/** JSON Schema of the open cultivar file. */

import { cultivarsFileSchema } from '../outputs/cultivarsFile.ts';

export function GET(): Response {
  return Response.json(cultivarsFileSchema());
}
