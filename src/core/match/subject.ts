/** What a match needs to know of a cultivar. */
import type { Cultivar } from '../records/cultivar.ts';

export type MatchedCultivar = Pick<
  Cultivar,
  | 'id'
  | 'name'
  | 'species'
  | 'flavour'
  | 'ripening'
  | 'crops'
  | 'pollination'
  | 'chromosomes'
  | 'fruit'
  | 'hardinessOffsetC'
  | 'trials'
>;
