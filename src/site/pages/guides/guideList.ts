/** Guides in lists, and the places a guide has a page for. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { Guide } from '../../../core/records/guide.ts';
import { guidePath, placeGuidePath } from '../../addresses/guidePaths.ts';
import { memoize } from '../../memo.ts';
import { placeSections, US_SECTION } from '../places/places.ts';

export interface GuideLine {
  path: string;
  title: string;
  summary: string;
}

/** Every guide in the order in which a buyer needs them. */
export const guideLines = memoize(({ guides }: Catalogue): GuideLine[] =>
  guides.map(({ id, title, summary }) => ({ path: guidePath(id), title, summary })),
);

/** Guides for a place, one left out. */
export function placeGuideLines({ guides }: Catalogue, place: string, except: string | null): GuideLine[] {
  return guides
    .filter(({ id }) => id !== except)
    .map(({ id, title, summary }) => ({ path: placeGuidePath(id, place), title, summary }));
}

export interface PlaceLinks {
  heading: string;
  links: { path: string; name: string }[];
}

/** Places a guide can be read for: the United States by climate region, other countries in one list by their names. */
export function guidePlaces(all: Catalogue, guide: Pick<Guide, 'id'>): PlaceLinks[] {
  return placeSections(all).flatMap(({ id: section, heading, groups }) => {
    const inUs = section === US_SECTION;
    const lists = groups.map(group => ({
      heading: group.heading,
      links: group.rows.map(({ id, name, region }) => {
        const where = inUs ? region : group.heading;
        return { path: placeGuidePath(guide.id, id), name: where === null ? name : `${name}, ${where}` };
      }),
    }));
    return inUs ? lists : [{ heading, links: lists.flatMap(({ links }) => links) }];
  });
}
