/** The open file of one place. */

import type { APIRoute, GetStaticPaths } from 'astro';
import { catalogue } from '../../content.ts';
import { outlooksFor } from '../../outlooks.ts';
import { openPlaceFile } from '../../outputs/placeFile.ts';
import { changedOnly } from '../../pageReuse.ts';
import { sendingRunsTo } from '../../site/pages/places/sending.ts';
import { listedCultivars } from '../../site/parts/raised.ts';
import { shownOfVerdicts } from '../../views/shown.ts';

export const getStaticPaths = (async () => {
  const all = await catalogue();
  const files = all.places.map(({ id }) => ({ params: { id } }));
  return changedOnly(files, ({ params: { id } }) => ({
    file: `places/${id}.json`,
    shows: () => shownOfVerdicts(all),
  }));
}) satisfies GetStaticPaths;

export const GET: APIRoute<Record<string, never>, { id: string }> = async ({ params }) => {
  const all = await catalogue();
  const found = await outlooksFor(all);
  const answers = found.get(params.id)!;
  const matches = listedCultivars(all).map(({ cultivar }) => answers.match(cultivar));
  return Response.json(openPlaceFile(all, answers.place, matches, sendingRunsTo(all, found, answers)));
};
