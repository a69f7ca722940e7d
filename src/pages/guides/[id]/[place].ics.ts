/** The calendar of a guide at a place. Guides without dated tasks have none. */

import type { APIRoute, GetStaticPaths, InferGetStaticParamsType, InferGetStaticPropsType } from 'astro';
import { careYears } from '../../../careYears.ts';
import { catalogue } from '../../../content.ts';
import { absolute } from '../../../href.ts';
import { changedOnly, isLeftOut } from '../../../pageReuse.ts';
import { placeCalendarFile } from '../../../site/pages/guides/guideFiles.ts';
import { guidesAtPlaces } from '../../../site/pages/guides/guideSubject.ts';
import { placeTasks } from '../../../site/pages/guides/guideViews.ts';
import { guideCalendarFile } from '../../../views/printed.ts';
import { shownOfGuides } from '../../../views/shown.ts';

export const getStaticPaths = (async () => {
  const all = await catalogue();
  const files = [];
  for (const { guide, place, species } of guidesAtPlaces(all)) {
    // Whether it has tasks is not asked in vain.
    if (isLeftOut(guideCalendarFile(guide.id, place.id, null))) continue;
    const year = (await careYears(all, species)).get(place.id)!;
    if (placeTasks(all, guide, place, year).length === 0) continue;
    files.push({ params: { id: guide.id, place: place.id }, props: { guide, place, year } });
  }
  return changedOnly(files, ({ params: { id, place } }) => ({
    file: guideCalendarFile(id, place, null),
    shows: () => shownOfGuides(all),
  }));
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;
type Params = InferGetStaticParamsType<typeof getStaticPaths>;

export const GET: APIRoute<Props, Params> = async ({ props: { guide, place, year } }) =>
  new Response(placeCalendarFile(await catalogue(), guide, place, year, absolute), {
    headers: { 'content-type': 'text/calendar; charset=utf-8' },
  });
