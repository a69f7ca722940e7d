/** All fruits of the yard at one scale, on a shelf for each month, in the order in which they ripen where the yard stands. */

import type { Catalogue, CultivarEntry } from '../../../core/catalogue.ts';
import { monthDay, monthInWords } from '../../../core/days.ts';
import { readyOffers } from '../../../core/lots/readyOffers.ts';
import type { Match } from '../../../core/match/answers.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { cultivarPath } from '../../addresses/paths.ts';
import { type FruitMark, fruitMark } from '../../drawing/fruitMarks.ts';
import { alongAxis } from '../../drawing/seasonBar.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { fruitSizeInWords } from '../../words/measures.ts';
import { colorsInWords } from '../../words/words.ts';

/** Fruits drawn at most: more than fill a few shelves cannot be taken in. */
const drawnAtMost = 60;

export interface ShelvedFruit {
  path: string;
  name: string;
  mark: FruitMark;
  /** For people who do not see it: colors, size. */
  words: string;
  /** Whether a tree of it is ready today. */
  ready: boolean;
}

export interface Shelf {
  /** `August`; null for those that ripen in no month outdoors there. */
  month: string | null;
  fruits: ShelvedFruit[];
}

/** Day of the year of the first ripe fruit of the crop that is surest outdoors, in the middle year; null where it hardly ever ripens. */
function ripeDay({ ripening }: Match): number | null {
  const outdoors = ripening.filter(({ dates, word }) => dates !== null && word !== 'not-outdoors');
  const [surest] = [...outdoors].sort((a, b) => b.share - a.share);
  return surest?.dates?.p50 ?? null;
}

function shelved(all: Catalogue, { cultivar, species, lots }: CultivarEntry): ShelvedFruit {
  const { fruit } = cultivar;
  return {
    path: cultivarPath(cultivar.id),
    name: cultivar.name,
    mark: fruitMark(all, cultivar, species, 'shelf'),
    words: `${colorsInWords(fruit)}, ${fruitSizeInWords(fruit.lengthMm, fruit.widthMm)}`,
    ready: readyOffers(lots).lots > 0,
  };
}

/** The shelves, earliest month first; what does not ripen outdoors comes last. Where there are too many fruits, those of trees that are ready. */
export function fruitShelves(all: Catalogue, { match, place }: PlaceAnswers): Shelf[] {
  const listed = listedCultivars(all);
  const isReady = ({ lots }: CultivarEntry) => readyOffers(lots).lots > 0;
  const drawn =
    listed.length <= drawnAtMost
      ? listed
      : [...listed.filter(isReady), ...listed.filter(entry => !isReady(entry))].slice(0, drawnAtMost);
  const dated = drawn.map(entry => {
    const doy = ripeDay(match(entry.cultivar));
    return { entry, doy, along: doy === null ? Number.POSITIVE_INFINITY : alongAxis(doy, place.lat) };
  });
  dated.sort((a, b) => a.along - b.along || (a.entry.cultivar.name < b.entry.cultivar.name ? -1 : 1));
  const shelves = new Map<string | null, ShelvedFruit[]>();
  for (const { entry, doy } of dated) {
    const month = doy === null ? null : monthInWords(Number(monthDay(doy).slice(0, 2)));
    shelves.set(month, [...(shelves.get(month) ?? []), shelved(all, entry)]);
  }
  return [...shelves].map(([month, fruits]) => ({ month, fruits }));
}
