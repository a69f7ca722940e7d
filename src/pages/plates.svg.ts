/** The small plates of the rows, in one file that pages share. */

import { catalogue } from '../content.ts';
import { fruitMarksFile } from '../site/drawing/fruitMarks.ts';

export async function GET(): Promise<Response> {
  return new Response(fruitMarksFile(await catalogue()), { headers: { 'content-type': 'image/svg+xml' } });
}
