/** Kinds of climate: the classes that occur, the places of each, and what does well in them. */

import type { Catalogue } from '../core/catalogue.ts';
import { airClasses, type PlaceClass, seasonClasses, winterClasses } from '../core/climate/placeClass.ts';
import { type Level, levels } from '../core/match/answers.ts';
import { levelWords } from '../core/match/words.ts';
import type { Place } from '../core/records/place.ts';
import type { Outlooks } from '../outlooks.ts';
import { oncePer } from './memo.ts';
import { groupBy } from './paging.ts';
import { climatePath, cultivarPath, placePath } from './paths.ts';
import { whereabouts } from './place.ts';
import { classInWords } from './placeClasses.ts';
import { listedCultivars } from './raised.ts';
import { speciesName } from './stock.ts';
import { bookOf, kindIn } from './verdictBook.ts';
import { sentence } from './words.ts';

export interface ClimateKind {
  /** `cool-middle-humid`, as in the address. */
  id: string;
  path: string;
  kind: PlaceClass;
  heading: string;
  places: Place[];
}

/** The kind of a class, as in its address: `cool-middle-humid`. */
export function climateId({ winter, season, air }: PlaceClass): string {
  return `${winter}-${season}-${air}`;
}

/** The kinds that occur among the places, coldest winters first, then short seasons, then dry air. */
export const climateKinds = oncePer(({ places, climates }: Catalogue): ClimateKind[] => {
  const known = places.filter(({ id }) => climates.has(id));
  const kindOf = ({ id }: Place) => climates.get(id)!.class.answer;
  const order = ({ kind: { winter, season, air } }: ClimateKind) =>
    winterClasses.indexOf(winter) * 100 + seasonClasses.indexOf(season) * 10 + airClasses.indexOf(air);
  return [...groupBy(known, place => climateId(kindOf(place)))]
    .map(([id, members]) => {
      const kind = kindOf(members[0]!);
      return { id, path: climatePath(id), kind, heading: sentence(classInWords(kind)), places: members };
    })
    .sort((a, b) => order(a) - order(b));
});

export interface KindPlaceRow {
  path: string;
  name: string;
  where: string;
}

export function kindPlaces({ places }: ClimateKind): KindPlaceRow[] {
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
export function kindCultivars(all: Catalogue, outlooks: Outlooks, { places }: ClimateKind): KindCultivar[] {
  const books = places.map(({ id }) => bookOf(all, outlooks.get(id)!));
  const found = listedCultivars(all).map(({ cultivar, species }) => {
    const kinds = books.map(book => kindIn(book, cultivar.id));
    const steps = kinds.map(({ level }) => levels.indexOf(level)).sort((a, b) => a - b);
    const at = (index: number) => levels[steps[index]!]!;
    const [best, middle, worst] = [at(0), at(Math.ceil(steps.length / 2) - 1), at(steps.length - 1)];
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
  return found
    .sort((a, b) => levels.indexOf(a.row.level) - levels.indexOf(b.row.level) || b.chance - a.chance)
    .slice(0, cultivarsAtMost)
    .map(({ row }) => row);
}
