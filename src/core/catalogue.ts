/** The one value every page, feed and label is made from. */

import type { Day } from './days.ts';
import type { LotAnswers } from './lots/answers.ts';
import type { Cultivar } from './records/cultivar.ts';
import type { Lot } from './records/lot.ts';
import type { Place } from './records/place.ts';
import type { Species } from './records/species.ts';
import type { Yard } from './records/yard.ts';

/** The yard without its costs. */
export type PublicYard = Omit<Yard, 'costs'>;
/** A cultivar without the requests waiting for it. */
export type PublicCultivar = Omit<Cultivar, 'requests'>;

export interface LotEntry extends LotAnswers {
  lot: Lot;
  cultivar: PublicCultivar;
  species: Species;
  /** Nothing left and nothing coming: the page stays and says so. */
  soldOut: boolean;
}

export interface CultivarEntry {
  cultivar: PublicCultivar;
  species: Species;
  flavour: { id: string; name: string; means: string };
  /** Lots of this cultivar, those with a form ready first, then by the day they open, then by id. */
  lots: LotEntry[];
}

export interface Catalogue {
  asOf: Day;
  yard: PublicYard;
  home: Place;
  species: Species[];
  /** By name. */
  cultivars: CultivarEntry[];
  /** By id. */
  lots: LotEntry[];
  places: Place[];
}
