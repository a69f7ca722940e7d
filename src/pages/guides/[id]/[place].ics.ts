/** The calendar of a guide at a place. Guides without dated tasks have none. */

import type { APIRoute, GetStaticPaths, InferGetStaticParamsType, InferGetStaticPropsType } from 'astro';
import { careYears } from '../../../careYears.ts';
import { catalogue } from '../../../content.ts';
import { absolute } from '../../../href.ts';
import { changedOnly } from '../../../pageReuse.ts';
import { placeCalendarFile } from '../../../views/guides/guideFiles.ts';
import { leadingSpecies } from '../../../views/guides/guideSubject.ts';
import { placeTasks } from '../../../views/guides/guideViews.ts';
import { shownOfGuides } from '../../../views/shown.ts';

export const getStaticPaths = (async () => {
  const all = await catalogue();
  const files = [];
  for (const guide of all.guides) {
    const species = leadingSpecies(all, guide);
    if (species === null) continue;
    const years = await careYears(species);
    for (const place of all.places) {
      const year = years.get(place.id)!;
      if (placeTasks(all, guide, place, year).length === 0) continue;
      files.push({ params: { id: guide.id, place: place.id }, props: { guide, place, year } });
    }
  }
  return changedOnly(files, ({ params: { id, place } }) => ({
    file: `guides/${id}/${place}.ics`,
    shows: () => shownOfGuides(all),
  }));
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;
type Params = InferGetStaticParamsType<typeof getStaticPaths>;

export const GET: APIRoute<Props, Params> = async ({ props: { guide, place, year } }) =>
  new Response(placeCalendarFile(await catalogue(), guide, place, year, absolute), {
    headers: { 'content-type': 'text/calendar; charset=utf-8' },
  });
