import { atKey } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** Base prices are for species that have a file. */
export const priceSpecies: Check = ({ yard, ids }) =>
  Object.keys(yard?.value.prices.base ?? {}).flatMap(species =>
    checkReference({
      rule: 'price-species',
      file: yard!.file,
      spot: atKey('prices', 'base', species),
      kind: 'species',
      id: species,
      known: ids.species,
      where: 'Species are in content/species/.',
    }),
  );
