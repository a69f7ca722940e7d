/** What the browser fetches to answer for a town: where parcels leave from (`/my-place/home.json`), and the climates of all reference places (`/my-place/climates.json`). */

import type { Catalogue } from '../../core/catalogue.ts';
import { figuresOfPlace } from '../../core/climate/place.ts';
import type { Day } from '../../core/days.ts';
import { type ComparedClimate, comparedClimate } from '../../core/match/comparedClimate.ts';
import type { SendingHome } from '../../core/match/townOutlook.ts';
import type { SendingRules } from '../../core/records/sending.ts';
import { placePath } from '../addresses/paths.ts';
import { nameAndWhereabouts } from '../pages/places/place.ts';

export interface HomeFile {
  asOf: Day;
  home: Omit<SendingHome, 'figures'> & { figures: Omit<SendingHome['figures'], 'published'> };
  sending: SendingRules;
}

export function homeFile(all: Catalogue): HomeFile {
  const { home, yard, asOf } = all;
  const { published: _told, ...figures } = figuresOfPlace(home);
  const { freeze } = all.climates.get(home.id)!;
  return {
    asOf,
    home: { name: home.name, country: home.country, figures, freeze32F: freeze['32F'].answer },
    sending: yard.sending,
  };
}

interface ClimateOfPlace {
  id: string;
  name: string;
  path: string;
  climate: ComparedClimate;
}

export interface ClimatesFile {
  places: ClimateOfPlace[];
}

const rounded = (value: number, digits: number) => Number(value.toFixed(digits));

export function climatesFile({ places, climates }: Pick<Catalogue, 'places' | 'climates'>): ClimatesFile {
  return {
    places: places.map(place => {
      const climate = comparedClimate(figuresOfPlace(place), climates.get(place.id)!);
      return {
        id: place.id,
        name: nameAndWhereabouts(place),
        path: placePath(place.id),
        climate: {
          ...climate,
          coldestC: rounded(climate.coldestC, 1),
          heat: Math.round(climate.heat),
          deficitKpa: rounded(climate.deficitKpa, 2),
        },
      };
    }),
  };
}
