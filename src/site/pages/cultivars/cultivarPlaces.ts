/** A cultivar's page: where it does what, over all places. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { summerClasses, winterClasses } from '../../../core/climate/placeClass.ts';
import { type Level, levels } from '../../../core/match/answers.ts';
import { levelWords } from '../../../core/match/words.ts';
import type { Place } from '../../../core/records/place.ts';
import type { Outlooks, PlaceAnswers } from '../../../outlooks.ts';
import { placePath } from '../../addresses/paths.ts';
import { onMap } from '../../drawing/usMap.ts';
import { memoize } from '../../memo.ts';
import type { Example } from '../../parts/myTree.ts';
import { bookOf, kindIn, verdictIn } from '../../parts/verdictBook.ts';
import { classInBrief } from '../../words/placeClasses.ts';
import { joinedCrops, type Told } from '../../words/verdict.ts';
import { whereabouts } from '../places/place.ts';

/** A place as all cultivars' pages name it. */
export interface ToldPlace {
  path: string;
  name: string;
  where: string;
  kind: string;
}

export interface PlaceVerdict {
  place: ToldPlace;
  words: string;
  ripens: string;
}

export interface PlaceVerdictWithReasons extends PlaceVerdict {
  level: Level;
  because: Told[];
  change: Told[];
}

export interface LevelGroup {
  level: Level;
  words: string;
  places: PlaceVerdict[];
}

export interface CultivarPlaces {
  /** A few places as unlike each other as there are, the yard's own first. */
  spread: PlaceVerdictWithReasons[];
  /** All places by verdict, best first. */
  groups: LevelGroup[];
  /** Where on the map of the United States each level is. */
  dots: { x: number; y: number; level: Level }[];
  count: number;
}

/** Places told with their reasons. */
const spreadSize = 6;

/**
 * The home place, then places of other kinds of winter and summer from the coldest to the warmest, those of the yard's own country
 * before others: the same few for every cultivar, so that cultivars can be compared.
 */
function spreadOf({ home, places, climates }: Catalogue): Place[] {
  const stepsOf = ({ id }: Place) => {
    const { winter, summer } = climates.get(id)!.class.answer;
    return winterClasses.indexOf(winter) * summerClasses.length + summerClasses.indexOf(summer);
  };
  const chosen = new Map<number, Place>();
  for (const place of [home, ...places.filter(({ country }) => country === home.country), ...places]) {
    if (!chosen.has(stepsOf(place))) chosen.set(stepsOf(place), place);
  }
  const rest = [...chosen.values()].slice(1).sort((a, b) => stepsOf(a) - stepsOf(b));
  const wanted = Math.min(spreadSize - 1, rest.length);
  const at = (index: number) => Math.round((index * (rest.length - 1)) / Math.max(1, wanted - 1));
  return [home, ...Array.from({ length: wanted }, (_, index) => rest[at(index)]!)];
}

const spreads = memoize(spreadOf);

const toldPlaces = memoize(
  ({ places, climates }: Catalogue) =>
    new Map<string, ToldPlace>(
      places.map(place => [
        place.id,
        {
          path: placePath(place.id),
          name: place.name,
          where: whereabouts(place),
          kind: classInBrief(climates.get(place.id)!.class.answer),
        },
      ]),
    ),
);

function verdictAt(all: Catalogue, answers: PlaceAnswers, cultivar: string): PlaceVerdict & { level: Level } {
  const { level, ripens } = kindIn(bookOf(all, answers), cultivar);
  const place = toldPlaces(all).get(answers.place.id)!;
  return { place, level, words: levelWords[level], ripens: joinedCrops(ripens) };
}

const mapPoints = memoize(({ places }: Catalogue) => new Map(places.map(place => [place.id, onMap(place)])));

export function cultivarPlaces(all: Catalogue, outlooks: Outlooks, cultivar: string): CultivarPlaces {
  const points = mapPoints(all);
  const byLevel = new Map<Level, PlaceVerdict[]>(levels.map(level => [level, []]));
  const dots: CultivarPlaces['dots'] = [];
  for (const [id, answers] of outlooks) {
    const verdict = verdictAt(all, answers, cultivar);
    const { level } = verdict;
    byLevel.get(level)!.push(verdict);
    const at = points.get(id);
    if (at) dots.push({ x: at.x, y: at.y, level });
  }
  return {
    spread: spreads(all).map(({ id }) => {
      const answers = outlooks.get(id)!;
      const { because, change } = verdictIn(bookOf(all, answers), cultivar);
      return { ...verdictAt(all, answers, cultivar), because, change };
    }),
    groups: [...byLevel]
      .map(([level, places]) => ({ level, words: levelWords[level], places }))
      .filter(({ places }) => places.length > 0),
    dots,
    count: outlooks.size,
  };
}

/** Of the spread, the coldest, the middle and the warmest: enough for an example. */
function examplePlaces(all: Catalogue): Place[] {
  const [home, ...others] = spreads(all);
  const near = others.filter(({ country }) => country === home?.country);
  const away = near.length >= 3 ? near : others;
  return [...new Set([away[0], away[Math.floor(away.length / 2)], away.at(-1)])].filter(
    place => place !== undefined,
  );
}

const examplesOf = memoize((outlooks: Outlooks) =>
  memoize((all: Catalogue) => {
    const made = new Map<string, Example[]>();
    return (cultivar: string): Example[] => {
      const known = made.get(cultivar);
      if (known !== undefined) return known;
      const examples = examplePlaces(all).map(({ id }) => {
        const { place, level, ripens } = verdictAt(all, outlooks.get(id)!, cultivar);
        return { path: place.path, name: place.name, level, ripens };
      });
      made.set(cultivar, examples);
      return examples;
    };
  }),
);

/** How a cultivar does in three places unlike each other, for a visitor who has not said where they live. */
export function exampleVerdicts(all: Catalogue, outlooks: Outlooks, cultivar: string): Example[] {
  return examplesOf(outlooks)(all)(cultivar);
}

/** `At home in 12 of 82 places, with care in 9`: the first lines of the answer. */
export function placesSentence({ groups }: Pick<CultivarPlaces, 'groups'>): string {
  const all = groups.reduce((sum, { places }) => sum + places.length, 0);
  const told = groups.map(({ words, places }, index) =>
    index === 0
      ? `${words} in ${places.length} of ${all} places`
      : `${words.toLowerCase()} in ${places.length}`,
  );
  return `${told.join(', ')}.`;
}
