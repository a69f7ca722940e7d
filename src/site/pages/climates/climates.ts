/** Kinds of climate: the classes that occur, the places of each, and what does well in them. */

import type { Catalogue } from '../../../core/catalogue.ts';
import {
  airClasses,
  type ClimateKind,
  climateKindId,
  climateKindOf,
  summerClasses,
  winterClasses,
} from '../../../core/climate/placeClass.ts';
import type { Level } from '../../../core/match/answers.ts';
import { levelRange, ranked } from '../../../core/match/ranking.ts';
import { levelWords } from '../../../core/match/words.ts';
import type { Place } from '../../../core/records/place.ts';
import type { Outlooks } from '../../../outlooks.ts';
import { climatePath, cultivarPath, placePath } from '../../addresses/paths.ts';
import { memoize } from '../../memo.ts';
import { groupBy } from '../../parts/paging.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { bookOf, kindIn } from '../../parts/verdictBook.ts';
import { kindInWords } from '../../words/placeClasses.ts';
import { sentence, winterWords } from '../../words/words.ts';
import { whereabouts } from '../places/place.ts';
import { speciesName } from '../stock/stock.ts';

export interface ShownKind {
  /** `cool-moderate-humid`, as in the address. */
  id: string;
  path: string;
  kind: ClimateKind;
  heading: string;
  /** Empty for a kind whose page was published once and that no place has now. */
  places: Place[];
}

function shownKind(id: string, kind: ClimateKind, places: Place[]): ShownKind {
  return { id, path: climatePath(id), kind, heading: sentence(kindInWords(kind)), places };
}

const kindOrder = ({ kind: { winter, summer, air } }: ShownKind) =>
  winterClasses.indexOf(winter) * 100 + summerClasses.indexOf(summer) * 10 + airClasses.indexOf(air);

/** The kinds that occur among the places, coldest winters first, then cool summers, then dry air. */
export const climateKinds = memoize(({ places, climates }: Catalogue): ShownKind[] => {
  const known = places.filter(({ id }) => climates.has(id));
  const kindAt = ({ id }: Place) => climates.get(id)!.class.answer;
  return [...groupBy(known, place => climateKindId(kindAt(place)))]
    .map(([id, members]) => shownKind(id, kindAt(members[0]!), members))
    .sort((a, b) => kindOrder(a) - kindOrder(b));
});

/** Every kind that has a page: those that occur, and those that once did, so that no address ever ends. */
export function publishedKinds(all: Catalogue): ShownKind[] {
  const former = all.formerClimates.map(id => shownKind(id, climateKindOf(id)!, []));
  return [...climateKinds(all), ...former];
}

export interface WinterKinds {
  /** Name of the part of the page: `winter-cold`. */
  id: string;
  heading: string;
  kinds: ShownKind[];
}

/** The kinds by their winters, every class of winter once: earlier addresses lead to these parts, so none may be missing. */
export function kindsByWinter(all: Catalogue): WinterKinds[] {
  return winterClasses.map(winter => ({
    id: `winter-${winter}`,
    heading: `${sentence(winterWords[winter])} winters`,
    kinds: climateKinds(all).filter(({ kind }) => kind.winter === winter),
  }));
}

/** Kinds that occur with the same winter, for readers of a page whose kind no place has now. */
export function likeKinds(all: Catalogue, { kind }: ShownKind): ShownKind[] {
  return climateKinds(all).filter(other => other.kind.winter === kind.winter);
}

export interface KindPlaceRow {
  path: string;
  name: string;
  where: string;
}

export function kindPlaces({ places }: ShownKind): KindPlaceRow[] {
  return places.map(place => ({ path: placePath(place.id), name: place.name, where: whereabouts(place) }));
}

export interface KindCultivar {
  path: string;
  name: string;
  species: string;
  /** Level of the middle place of the kind. */
  level: Level;
  words: string;
  /** `with care at Boston, a gamble at Chicago`; null where it does alike in all of them. */
  range: string | null;
}

/** Cultivars shown for a kind. */
const cultivarsAtMost = 60;

/** How cultivars do over the places of a kind, best first by the middle place; those of `not here` come last. */
export function kindCultivars(all: Catalogue, outlooks: Outlooks, { places }: ShownKind): KindCultivar[] {
  const books = places.map(({ id }) => bookOf(all, outlooks.get(id)!));
  const found = listedCultivars(all).map(({ cultivar, species }) => {
    const kinds = books.map(book => kindIn(book, cultivar.id));
    const { best, middle, worst } = levelRange(kinds.map(({ level }) => level))!;
    const chance = kinds.reduce((sum, kind) => sum + kind.chance, 0);
    const row: KindCultivar = {
      path: cultivarPath(cultivar.id),
      name: cultivar.name,
      species: speciesName(species),
      level: middle,
      words: levelWords[middle],
      range:
        best === worst
          ? null
          : `from ${levelWords[best].toLowerCase()} to ${levelWords[worst].toLowerCase()}`,
    };
    return { row, chance };
  });
  return ranked(found, ({ row: { level }, chance }) => ({ level, chance }))
    .slice(0, cultivarsAtMost)
    .map(({ row }) => row);
}
