/** What the browser fetches to find the place nearest to a visitor: `/my-place/where.json`. */

import type { Catalogue } from '../../core/catalogue.ts';
import type { ZipArea } from '../../zipAreas.ts';
import { whereabouts } from '../pages/places/place.ts';
import { unitsIn } from '../words/units.ts';

export interface ListedPlace {
  id: string;
  name: string;
  /** Region and country. */
  where: string;
  lat: number;
  lon: number;
  heightM: number;
  /** Which measures its readers see first. */
  units: 'us' | 'metric';
}

export interface WhereFile {
  areas: Record<string, ZipArea>;
  places: ListedPlace[];
  /** Whether the site has files of towns. */
  towns: boolean;
}

export function whereFile(
  { places, yard }: Pick<Catalogue, 'places' | 'yard'>,
  areas: Record<string, ZipArea>,
): WhereFile {
  return {
    areas,
    towns: yard.towns !== null,
    places: places.map(place => ({
      id: place.id,
      name: place.name,
      where: whereabouts(place),
      lat: place.lat,
      lon: place.lon,
      heightM: Math.round(place.elevationM),
      units: unitsIn(place.country),
    })),
  };
}
