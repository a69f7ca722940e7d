import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** A guide is for species that have a file. */
export const guideSpecies: Check = ({ guides, ids }) =>
  guides.flatMap(({ file, value }) =>
    value.species.flatMap((species, index) =>
      checkReference({
        rule: 'guide-species',
        file,
        spot: atValue('species', index),
        kind: 'species',
        id: species,
        known: ids.species,
        where: 'Species are in content/species/.',
      }),
    ),
  );
