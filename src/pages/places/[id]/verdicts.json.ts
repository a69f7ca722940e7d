/** The verdicts at one place, in the words of its page, for the browser of a visitor who has chosen it. */

import type { APIRoute, GetStaticPaths } from 'astro';
import { catalogue } from '../../../content.ts';
import { outlooksFor } from '../../../outlooks.ts';
import { changedOnly } from '../../../pageReuse.ts';
import { placeFile } from '../../../site/data/file.ts';
import { shownOfVerdicts } from '../../../views/shown.ts';

export const getStaticPaths = (async () => {
  const all = await catalogue();
  const files = all.places.map(({ id }) => ({ params: { id } }));
  return changedOnly(files, ({ params: { id } }) => ({
    file: `places/${id}/verdicts.json`,
    shows: () => shownOfVerdicts(all),
  }));
}) satisfies GetStaticPaths;

export const GET: APIRoute<Record<string, never>, { id: string }> = async ({ params }) => {
  const all = await catalogue();
  const found = await outlooksFor(all);
  return Response.json(placeFile(all, found, found.get(params.id)!));
};
