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
import { type CountedRules, destinationOf, type HomeDays, homeDays } from './core/match/destination.ts';
import { climateTraits } from './core/match/likeness.ts';
import { matcherFor } from './core/match/match.ts';
import { ownSpecies, type WeatherThere } from './core/match/ownDates.ts';
import { type PlaceOutlook, placeOutlook } from './core/match/placeOutlook.ts';
import type { Destination } from './core/match/sending.ts';
import type { MatchedCultivar } from './core/match/subject.ts';
import { heatStarts } from './core/phenology/heatStart.ts';
import { classLiters, containerClasses } from './core/records/container.ts';
import type { Place } from './core/records/place.ts';
import type { Species } from './core/records/species.ts';
import { rememberResult } from './resultStore.ts';

/** The pot answers are for when a tree is kept in one: what a young tree stands in for its first years. Standing: ours. */
export const USUAL_POT = '#3';

/** A place with what is known of it, and a way to ask how a cultivar does there. */
export interface PlaceAnswers {
  readonly place: Place;
  readonly outlook: PlaceOutlook;
  /** What its weather means to parcels that go there. */
  readonly parcels: Destination;
  match(cultivar: MatchedCultivar): Match;
}

/** Answers of every place by its id, in the order of the catalogue. */
export type Outlooks = ReadonlyMap<string, PlaceAnswers>;

/** The climates that trials of any cultivar name. */
function trialClimates({
  cultivars,
  places,
  climates,
}: Pick<Catalogue, 'cultivars' | 'places' | 'climates'>): MatchContext['trialClimates'] {
  const named = new Set(cultivars.flatMap(({ cultivar }) => cultivar.trials.map(({ place }) => place)));
  return Object.fromEntries(
    places.flatMap(place => {
      const climate = climates.get(place.id);
      if (!named.has(place.id) || climate === undefined) return [];
      return [[place.id, climateTraits(figuresOfPlace(place), climate.annualMinC.answer.p10)]];
    }),
  );
}

export function usualContext(
  all: Pick<Catalogue, 'asOf' | 'cultivars' | 'places' | 'climates'>,
): MatchContext {
  const pot = containerClasses.find(({ name }) => name === USUAL_POT)!;
  return {
    asOf: all.asOf,
    potLiters: classLiters(pot),
    shelterC: 0,
    waspsNear: false,
    trialClimates: trialClimates(all),
  };
}

/** Species that the yard has a cultivar of. */
export function grownSpecies({ species, cultivars }: Pick<Catalogue, 'species' | 'cultivars'>): Species[] {
  const grown = new Set(cultivars.map(({ cultivar }) => cultivar.species));
  return species.filter(({ id }) => grown.has(id));
}

/** Species as cultivars with ripening dates of their own show them; each such cultivar is judged by its own. */
export function ownSpeciesOf({
  species,
  cultivars,
  places,
}: Pick<Catalogue, 'species' | 'cultivars' | 'places'>): Species[] {
  const kept = new Map<string, WeatherThere | null>();
  const weatherAt = (placeId: string) => {
    const known = kept.get(placeId);
    if (known !== undefined) return known;
    const place = places.find(({ id }) => id === placeId);
    const there = place ? { name: place.name, years: weatherYears(figuresOfPlace(place)) } : null;
    kept.set(placeId, there);
    return there;
  };
  return cultivars.flatMap(({ cultivar }) => {
    const of = species.find(({ id }) => id === cultivar.species);
    const own = of && ownSpecies(of, cultivar, weatherAt);
    return own ? [own] : [];
  });
}

interface Made {
  readonly outlook: PlaceOutlook;
  readonly parcels: Destination;
}

/** How parcels are sent, with the days of the home yard on which they can leave; asked for only when something is to be counted. */
export interface Sending {
  readonly rules: CountedRules;
  homeDays(): HomeDays;
}

/** How parcels leave a home of these figures. */
export function sendingFrom(home: ClimateFigures, { weekdays, transitDays, limits }: CountedRules): Sending {
  const rules = { weekdays, transitDays, limits };
  let days: HomeDays | undefined;
  return {
    rules,
    homeDays() {
      days ??= homeDays(weatherYears(home), rules);
      return days;
    },
  };
}

/** What costs about a place: its outlook for each species and the chances on the way. Pure. */
export function makeOutlook(
  { id, name }: Pick<Place, 'id' | 'name'>,
  figures: ClimateFigures,
  climate: ClimateSummary,
  species: readonly Species[],
  sending: Sending,
): Made {
  const years = weatherYears(figures);
  const freeze = climate.freeze['32F'].answer;
  return {
    outlook: placeOutlook(
      { id, name, figures, years, climate, heatStarts: heatStarts(years, species, climate.chill.answer) },
      species,
    ),
    parcels: destinationOf(name, years, freeze, sending.rules, sending.homeDays()),
  };
}

/** A place that can be asked about any cultivar of these species. */
export function answersOf(
  place: Place,
  { outlook, parcels }: Made,
  species: readonly Species[],
  context: MatchContext,
): PlaceAnswers {
  const judges = new Map(species.map(each => [each.id, matcherFor(outlook, each, context)]));
  const match = (cultivar: MatchedCultivar): Match => {
    const judge = judges.get(`${cultivar.species}/${cultivar.id}`) ?? judges.get(cultivar.species);
    if (!judge) throw new RangeError(`no species ${cultivar.species} for the cultivar ${cultivar.id}`);
    return judge(cultivar);
  };
  return { place, outlook, parcels, match };
}

async function outlooksOf(all: Catalogue): Promise<Outlooks> {
  const species = [...grownSpecies(all), ...ownSpeciesOf(all)];
  const context = usualContext(all);
  const home = figuresOfPlace(all.home);
  const sending = sendingFrom(home, all.yard.sending);
  const found = new Map<string, PlaceAnswers>();
  for (const place of all.places) {
    const { id, name } = place;
    const climate = all.climates.get(id);
    if (climate === undefined) throw new Error(`no climate for ${id}`);
    const figures = figuresOfPlace(place);
    const made = await rememberResult(
      'outlook',
      { id, name, figures, species, home, rules: sending.rules },
      () => makeOutlook(place, figures, climate, species, sending),
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
