/** The open cultivar file. */

import { catalogue } from '../content.ts';
import { absolute } from '../href.ts';
import { cultivarsFile } from '../outputs/cultivarsFile.ts';

export async function GET(): Promise<Response> {
  return Response.json(cultivarsFile(await catalogue(), absolute));
}
