/** The care year of every place for a species, for the guides. Weather years are drawn only where nothing was kept from an earlier build. */

import { catalogue } from './content.ts';
import { type CareYear, careYear } from './core/care/careYear.ts';
import { USUAL_POT_LITRES } from './core/care/plantInCare.ts';
import type { Catalogue } from './core/catalogue.ts';
import { figuresOfPlace } from './core/climate/place.ts';
import { weatherYears } from './core/climate/weatherYears.ts';
import type { Species } from './core/records/species.ts';
import { rememberResult } from './resultStore.ts';

/** Care years of one species by the id of the place. */
export type CareYears = ReadonlyMap<string, CareYear>;

async function yearsOf({ places, climates }: Catalogue, species: Species): Promise<CareYears> {
  const years = new Map<string, CareYear>();
  for (const place of places) {
    const summary = climates.get(place.id);
    if (summary === undefined) throw new Error(`no climate for ${place.id}`);
    const { id, name } = place;
    const figures = figuresOfPlace(place);
    years.set(
      id,
      await rememberResult('care', { id, name, figures, species, litres: USUAL_POT_LITRES }, () =>
        careYear({ id, name, years: weatherYears(figures), summary }, species, USUAL_POT_LITRES),
      ),
    );
  }
  return years;
}

const kept = new WeakMap<Catalogue, Map<string, Promise<CareYears>>>();

/** The care years of the catalogue the pages show, for a tree in a pot of usual size. */
export async function careYears(species: Species): Promise<CareYears> {
  const all = await catalogue();
  const ofCatalogue = kept.get(all) ?? new Map<string, Promise<CareYears>>();
  kept.set(all, ofCatalogue);
  let found = ofCatalogue.get(species.id);
  if (found === undefined) {
    found = yearsOf(all, species);
    ofCatalogue.set(species.id, found);
  }
  return found;
}
