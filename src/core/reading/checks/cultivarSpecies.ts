import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** A cultivar is of a species that has a file. */
export const cultivarSpecies: Check = ({ cultivars, ids }) =>
  cultivars.flatMap(({ file, value }) =>
    checkReference({
      rule: 'cultivar-species',
      file,
      spot: atValue('species'),
      kind: 'species',
      id: value.species,
      known: ids.species,
      where: 'Species are in content/species/.',
    }),
  );
