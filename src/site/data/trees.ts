/** What the browser fetches to answer for a visitor's own freeze dates: `/my-place/trees.json`. */

import type { Catalogue } from '../../core/catalogue.ts';
import type { MatchContext } from '../../core/match/answers.ts';
import { type MatchedCultivar, matchedTraits } from '../../core/match/subject.ts';
import type { Species } from '../../core/records/species.ts';
import { grownSpecies, usualContext } from '../../outlooks.ts';
import { listedCultivars } from '../parts/raised.ts';

export interface TreesFile {
  context: MatchContext;
  species: Species[];
  cultivars: MatchedCultivar[];
  /** Ids of those that are no longer raised and sold to the last plant: answered on their own pages, and recommended nowhere. */
  past: string[];
}

/** Only what a match needs of each cultivar. */
function matched(cultivar: MatchedCultivar): MatchedCultivar {
  return Object.fromEntries(matchedTraits.map(trait => [trait, cultivar[trait]])) as MatchedCultivar;
}

export function treesFile(all: Catalogue): TreesFile {
  const listed = new Set(listedCultivars(all).map(({ cultivar }) => cultivar.id));
  return {
    context: usualContext(all),
    species: grownSpecies(all),
    cultivars: all.cultivars.map(({ cultivar }) => matched(cultivar)),
    past: all.cultivars.map(({ cultivar }) => cultivar.id).filter(id => !listed.has(id)),
  };
}
