/** The shipped places and species, read for tests of care. */

import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { type CareClimate, type CareYear, careYear } from '../../src/core/care/careYear.ts';
import { figuresOfPlace } from '../../src/core/climate/place.ts';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { normalisePlace, writtenPlace } from '../../src/core/records/place.ts';
import { normaliseSpecies, type Species, writtenSpecies } from '../../src/core/records/species.ts';

const content = new URL('../../content/', import.meta.url);

function readText(path: string): string {
  return readFileSync(new URL(path, content), 'utf8');
}

export const speciesIds = [
  'american-persimmon',
  'asian-persimmon',
  'fig',
  'jujube',
  'mulberry',
  'pomegranate',
] as const;

const keptSpecies = new Map<string, Species>();
export function realSpecies(id: string): Species {
  const kept = keptSpecies.get(id);
  if (kept) return kept;
  const species = normaliseSpecies(id, writtenSpecies.parse(parse(readText(`species/${id}.yaml`))));
  keptSpecies.set(id, species);
  return species;
}

const keptClimates = new Map<string, CareClimate>();
export function realClimate(id: string): CareClimate {
  const kept = keptClimates.get(id);
  if (kept) return kept;
  const place = normalisePlace(id, writtenPlace.parse(parse(readText(`places/${id}.yaml`))));
  const figures = figuresOfPlace(place);
  const years = weatherYears(figures);
  const climate = { id, name: place.name, years, summary: climateSummary(figures, years) };
  keptClimates.set(id, climate);
  return climate;
}

const keptYears = new Map<string, CareYear>();
export function realYear(placeId: string, speciesId: string, potLiters = 11): CareYear {
  const key = `${placeId} ${speciesId} ${potLiters}`;
  const kept = keptYears.get(key);
  if (kept) return kept;
  const year = careYear(realClimate(placeId), realSpecies(speciesId), potLiters);
  keptYears.set(key, year);
  return year;
}
