/** What a match needs to know of a cultivar. */
import type { Cultivar } from '../records/cultivar.ts';

/** The one list of it: what is sent to a browser follows it too. */
export const matchedTraits = [
  'id',
  'name',
  'species',
  'flavor',
  'ripening',
  'crops',
  'pollination',
  'chromosomes',
  'fruit',
  'hardinessOffsetC',
  'trials',
] as const satisfies readonly (keyof Cultivar)[];

export type MatchedCultivar = Pick<Cultivar, (typeof matchedTraits)[number]>;
