/** The open stock file. */

import { catalogue } from '../content.ts';
import { absolute } from '../href.ts';
import { stockFile } from '../outputs/stockFile.ts';
import { runsFromHome } from '../site/parts/sentNow.ts';

export async function GET(): Promise<Response> {
  const all = await catalogue();
  return Response.json(stockFile(all, absolute, runsFromHome(all)));
}
