/** JSON Schema of the open stock file. */

import { stockFileSchema } from '../outputs/stockFile.ts';

export function GET(): Response {
  return Response.json(stockFileSchema());
}
