/** A test yard with places of three climates, and the answers of each. */

import { assemble, type Catalogue } from '../src/core/catalogue.ts';
import { figuresOfPlace } from '../src/core/climate/place.ts';
import { climateSummary } from '../src/core/climate/summary.ts';
import { day } from '../src/core/days.ts';
import { normalisePlace, writtenPlace } from '../src/core/records/place.ts';
import { answersOf, makeOutlook, type Outlooks, sendingFrom, usualContext } from '../src/outlooks.ts';
import { southern, tropics, type World, worldRecords } from './world.ts';

export interface YardWithPlaces {
  all: Catalogue;
  outlooks: Outlooks;
}

/** The yard of a world, with Canberra and Singapore beside its home. */
export function yardWithPlaces(world: World, asOf: string): YardWithPlaces {
  const records = worldRecords(world);
  for (const [id, written] of Object.entries({ canberra: southern, singapore: tropics })) {
    records.places.set(id, normalisePlace(id, writtenPlace.parse(written)));
  }
  const bare = assemble(records, day(asOf), new Map());
  const figures = new Map(bare.places.map(place => [place.id, figuresOfPlace(place)]));
  const climates = new Map([...figures].map(([id, found]) => [id, climateSummary(found)]));
  const all = { ...bare, climates };
  const context = usualContext(all);
  const sending = sendingFrom(figures.get(all.home.id)!, all.yard.sending);
  const outlooks = new Map(
    all.places.map(place => {
      const made = makeOutlook(place, figures.get(place.id)!, climates.get(place.id)!, all.species, sending);
      return [place.id, answersOf(place, made, all.species, context)] as const;
    }),
  );
  return { all, outlooks };
}
