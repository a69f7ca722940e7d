/** The calendar of a tree of one form from the day it arrives at a place. */

import type { APIRoute, GetStaticPaths, InferGetStaticParamsType, InferGetStaticPropsType } from 'astro';
import { careYears } from '../../../../careYears.ts';
import { catalogue } from '../../../../content.ts';
import { absolute } from '../../../../href.ts';
import { changedOnly } from '../../../../pageReuse.ts';
import { arrivalForms } from '../../../../site/pages/guides/arrivalViews.ts';
import { arrivalCalendarFile } from '../../../../site/pages/guides/guideFiles.ts';
import { guidesAtPlaces } from '../../../../site/pages/guides/guideSubject.ts';
import { guideCalendarFile } from '../../../../views/printed.ts';
import { shownOfGuides } from '../../../../views/shown.ts';

export const getStaticPaths = (async () => {
  const all = await catalogue();
  const files = guidesAtPlaces(all).flatMap(({ guide, place, species }) =>
    arrivalForms(guide).map(form => ({
      params: { id: guide.id, place: place.id, form },
      props: { guide, place, species, form },
    })),
  );
  return changedOnly(files, ({ params: { id, place }, props: { form } }) => ({
    file: guideCalendarFile(id, place, form),
    shows: () => shownOfGuides(all),
  }));
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;
type Params = InferGetStaticParamsType<typeof getStaticPaths>;

export const GET: APIRoute<Props, Params> = async ({ props: { guide, place, species, form } }) => {
  const all = await catalogue();
  const year = (await careYears(all, species)).get(place.id)!;
  return new Response(arrivalCalendarFile(all, guide, place, year, form, absolute), {
    headers: { 'content-type': 'text/calendar; charset=utf-8' },
  });
};
