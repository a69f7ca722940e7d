/** The verdicts at one place, for a visitor who has chosen it. */

import type { APIRoute, GetStaticPaths } from 'astro';
import { catalogue } from '../../content.ts';
import { outlooks } from '../../outlooks.ts';
import { placeFile } from '../../views/myPlace/file.ts';

export const getStaticPaths = (async () => {
  const { places } = await catalogue();
  return places.map(({ id }) => ({ params: { id } }));
}) satisfies GetStaticPaths;

export const GET: APIRoute<Record<string, never>, { id: string }> = async ({ params }) => {
  const found = await outlooks();
  return Response.json(placeFile(await catalogue(), found, found.get(params.id)!));
};
