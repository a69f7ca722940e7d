/** What the browser fetches to answer for a visitor's own freeze dates: `/my-place/trees.json`. */

import type { Catalogue, PublicCultivar } from '../../core/catalogue.ts';
import type { MatchContext } from '../../core/match/answers.ts';
import { ownSpeciesId } from '../../core/match/ownDates.ts';
import { type MatchedCultivar, matchedTraits } from '../../core/match/subject.ts';
import type { Species } from '../../core/records/species.ts';
import { noGrowth } from '../../core/records/speciesGrowth.ts';
import { grownSpecies, ownSpeciesOf, usualContext } from '../../outlooks.ts';
import { listedCultivars } from '../parts/raised.ts';

export interface TreesFile {
  context: MatchContext;
  species: Species[];
  cultivars: MatchedCultivar[];
  /** Ids of those that are no longer raised and sold to the last plant: answered on their own pages, and recommended nowhere. */
  past: string[];
}

/** Only what a match needs of each cultivar; one with ripening dates of its own is judged by the species as it shows it. */
function matched(cultivar: PublicCultivar, own: readonly Species[]): MatchedCultivar {
  const id = ownSpeciesId(cultivar);
  const traits = Object.fromEntries(matchedTraits.map(trait => [trait, cultivar[trait]])) as MatchedCultivar;
  return own.some(species => species.id === id) ? { ...traits, species: id } : traits;
}

export function treesFile(all: Catalogue): TreesFile {
  const listed = new Set(listedCultivars(all).map(({ cultivar }) => cultivar.id));
  const own = ownSpeciesOf(all);
  return {
    context: usualContext(all),
    // What becomes of a grown tree asks nothing of a place.
    species: [...grownSpecies(all), ...own].map(species => ({ ...species, growth: noGrowth })),
    cultivars: all.cultivars.map(({ cultivar }) => matched(cultivar, own)),
    past: all.cultivars.map(({ cultivar }) => cultivar.id).filter(id => !listed.has(id)),
  };
}
