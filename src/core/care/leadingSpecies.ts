/** The species whose dates a guide gives where no reader has said which. */

import type { Cultivar } from '../records/cultivar.ts';
import type { Guide } from '../records/guide.ts';
import type { Species } from '../records/species.ts';

/** Of some species, by id, the one that most cultivars belong to; of equal ones the first. Null for none. */
export function mostRaised(
  among: readonly Species[],
  cultivars: readonly Pick<Cultivar, 'species'>[],
): Species | null {
  const cultivarsOf = ({ id }: Species) => cultivars.filter(({ species }) => species === id).length;
  return [...among].sort((a, b) => cultivarsOf(b) - cultivarsOf(a))[0] ?? null;
}

/** The species a guide is for: those it names, else all. */
export function guideSpecies(guide: Pick<Guide, 'species'>, all: readonly Species[]): Species[] {
  return all.filter(({ id }) => guide.species.length === 0 || guide.species.includes(id));
}
