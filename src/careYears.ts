/** The care year of every place for a species, for the guides. Weather years are drawn only where nothing was kept from an earlier build. */

import { type CareYear, careYear } from './core/care/careYear.ts';
import { USUAL_POT_LITERS } from './core/care/plantInCare.ts';
import type { Catalogue } from './core/catalogue.ts';
import { figuresOfPlace } from './core/climate/place.ts';
import { type WeatherYears, weatherYears } from './core/climate/weatherYears.ts';
import type { Species } from './core/records/species.ts';
import { rememberResult } from './resultStore.ts';

/** Care years of one species by the id of the place. */
export type CareYears = ReadonlyMap<string, CareYear>;

/** By the id of the species. The weather years of a place are drawn once for all species, and not kept. */
async function yearsOf({
  places,
  climates,
  species,
}: Catalogue): Promise<Map<string, Map<string, CareYear>>> {
  const found = new Map(species.map(({ id }) => [id, new Map<string, CareYear>()]));
  for (const place of places) {
    const summary = climates.get(place.id);
    if (summary === undefined) throw new Error(`no climate for ${place.id}`);
    const { id, name } = place;
    const figures = figuresOfPlace(place);
    let drawn: WeatherYears | null = null;
    const years = () => {
      drawn ??= weatherYears(figures);
      return drawn;
    };
    for (const one of species) {
      const year = await rememberResult(
        'care',
        { id, name, figures, species: one, liters: USUAL_POT_LITERS },
        () => careYear({ id, name, years: years(), summary }, one, USUAL_POT_LITERS),
      );
      found.get(one.id)!.set(id, year);
    }
  }
  return found;
}

const kept = new WeakMap<Catalogue, ReturnType<typeof yearsOf>>();

/** The care years of a catalogue for a tree in a pot of usual size. */
export async function careYears(all: Catalogue, species: Species): Promise<CareYears> {
  const found = kept.get(all) ?? yearsOf(all);
  kept.set(all, found);
  const years = (await found).get(species.id);
  if (years === undefined) throw new RangeError(`no species ${species.id} in the catalogue`);
  return years;
}
