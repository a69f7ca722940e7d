/** The calendar of a tree of one form from the day it arrives at a place. */

import type { APIRoute, GetStaticPaths, InferGetStaticParamsType, InferGetStaticPropsType } from 'astro';
import { careYears } from '../../../../careYears.ts';
import { catalogue } from '../../../../content.ts';
import { absolute } from '../../../../href.ts';
import { changedOnly } from '../../../../pageReuse.ts';
import { arrivalForms } from '../../../../views/guides/arrivalViews.ts';
import { arrivalCalendarFile } from '../../../../views/guides/guideFiles.ts';
import { leadingSpecies } from '../../../../views/guides/guideSubject.ts';
import { shownOfGuides } from '../../../../views/shown.ts';

export const getStaticPaths = (async () => {
  const all = await catalogue();
  const files = [];
  for (const guide of all.guides) {
    const species = leadingSpecies(all, guide);
    if (species === null) continue;
    for (const form of arrivalForms(guide)) {
      const years = await careYears(species);
      for (const place of all.places) {
        const year = years.get(place.id)!;
        files.push({ params: { id: guide.id, place: place.id, form }, props: { guide, place, year, form } });
      }
    }
  }
  return changedOnly(files, ({ params: { id, place, form } }) => ({
    file: `guides/${id}/${place}/${form}.ics`,
    shows: () => shownOfGuides(all),
  }));
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;
type Params = InferGetStaticParamsType<typeof getStaticPaths>;

export const GET: APIRoute<Props, Params> = async ({ props: { guide, place, year, form } }) =>
  new Response(arrivalCalendarFile(await catalogue(), guide, place, year, form, absolute), {
    headers: { 'content-type': 'text/calendar; charset=utf-8' },
  });
