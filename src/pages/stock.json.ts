/** The open stock file. */

import { catalogue } from '../content.ts';
import { absolute } from '../href.ts';
import { stockFile } from '../outputs/stockFile.ts';

export async function GET(): Promise<Response> {
  return Response.json(stockFile(await catalogue(), absolute));
}
