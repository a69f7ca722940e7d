/**
 * How every cultivar does in every place, for the pages. What costs (weather years, ripening odds, chances on the way) is
 * worked out once and kept between builds; a match is then made when a page asks for it and not kept, since the reasons of
 * all of them together would fill the memory.
 */

import type { Catalogue } from './core/catalogue.ts';
import type { ClimateFigures } from './core/climate/figures.ts';
import { figuresOfPlace } from './core/climate/place.ts';
import type { ClimateSummary } from './core/climate/summary.ts';
import { weatherYears } from './core/climate/weatherYears.ts';
import type { Match, MatchContext } from './core/match/answers.ts';
import { matcherFor } from './core/match/match.ts';
import { type PlaceOutlook, placeOutlook } from './core/match/placeOutlook.ts';
import { type TripRisks, tripRisks } from './core/match/sending.ts';
import type { MatchedCultivar } from './core/match/subject.ts';
import { classLitres, containerClasses } from './core/records/container.ts';
import type { Place } from './core/records/place.ts';
import type { Species } from './core/records/species.ts';
import { rememberResult } from './resultStore.ts';

/** The pot answers are for when a tree is kept in one: what a young tree stands in for its first years. Standing: ours. */
export const USUAL_POT = '#3';

/** A place with what is known of it, and a way to ask how a cultivar does there. */
export interface PlaceAnswers {
  readonly place: Place;
  readonly outlook: PlaceOutlook;
  readonly risks: TripRisks;
  match(cultivar: MatchedCultivar): Match;
}

/** Answers of every place by its id, in the order of the catalogue. */
export type Outlooks = ReadonlyMap<string, PlaceAnswers>;

export function usualContext({ asOf }: Pick<Catalogue, 'asOf'>): MatchContext {
  const pot = containerClasses.find(({ name }) => name === USUAL_POT)!;
  return { asOf, potLitres: classLitres(pot), shelterC: 0, waspsNear: false };
}

/** Species that the yard has a cultivar of. */
export function grownSpecies({ species, cultivars }: Pick<Catalogue, 'species' | 'cultivars'>): Species[] {
  const grown = new Set(cultivars.map(({ cultivar }) => cultivar.species));
  return species.filter(({ id }) => grown.has(id));
}

interface Made {
  readonly outlook: PlaceOutlook;
  readonly risks: TripRisks;
}

type SendingLimits = Pick<Catalogue['yard']['sending'], 'coldestC' | 'hottestC' | 'transitDays'>;

/** What costs about a place: its outlook for each species and the chances on the way. Pure. */
export function makeOutlook(
  { id, name }: Pick<Place, 'id' | 'name'>,
  figures: ClimateFigures,
  climate: ClimateSummary,
  species: readonly Species[],
  limits: SendingLimits,
): Made {
  const years = weatherYears(figures);
  return {
    outlook: placeOutlook({ id, name, figures, years, climate }, species),
    risks: tripRisks(years, limits),
  };
}

/** A place that can be asked about any cultivar of these species. */
export function answersOf(
  place: Place,
  { outlook, risks }: Made,
  species: readonly Species[],
  context: MatchContext,
): PlaceAnswers {
  const judges = new Map(species.map(each => [each.id, matcherFor(outlook, each, context)]));
  const match = (cultivar: MatchedCultivar): Match => {
    const judge = judges.get(cultivar.species);
    if (!judge) throw new RangeError(`no species ${cultivar.species} for the cultivar ${cultivar.id}`);
    return judge(cultivar);
  };
  return { place, outlook, risks, match };
}

async function outlooksOf(all: Catalogue): Promise<Outlooks> {
  const species = grownSpecies(all);
  const context = usualContext(all);
  const { coldestC, hottestC, transitDays } = all.yard.sending;
  const limits = { coldestC, hottestC, transitDays };
  const found = new Map<string, PlaceAnswers>();
  for (const place of all.places) {
    const { id, name } = place;
    const climate = all.climates.get(id);
    if (climate === undefined) throw new Error(`no climate for ${id}`);
    const figures = figuresOfPlace(place);
    const made = await rememberResult('outlook', { id, name, figures, species, limits }, () =>
      makeOutlook(place, figures, climate, species, limits),
    );
    found.set(id, answersOf(place, made, species, context));
  }
  return found;
}

const kept = new WeakMap<Catalogue, Promise<Outlooks>>();

/** The outlooks of a catalogue, worked out once. */
export function outlooksFor(all: Catalogue): Promise<Outlooks> {
  let found = kept.get(all);
  if (found === undefined) {
    found = outlooksOf(all);
    kept.set(all, found);
  }
  return found;
}
