/** ZIP code areas and reference places, for finding the nearest. */

import { catalogue } from '../../content.ts';
import { whereFile } from '../../site/data/where.ts';
import { zipAreas } from '../../zipAreas.ts';

export async function GET(): Promise<Response> {
  return Response.json(whereFile(await catalogue(), await zipAreas()));
}
