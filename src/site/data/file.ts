/** What the browser fetches about a place that a visitor has chosen: `/places/ID/verdicts.json`. */

import type { Catalogue } from '../../core/catalogue.ts';
import { figuresOfPlace } from '../../core/climate/place.ts';
import type { Level } from '../../core/match/answers.ts';
import type { NearestPlace } from '../../core/match/ownFigures.ts';
import { levelWords } from '../../core/match/words.ts';
import type { Form } from '../../core/records/common.ts';
import type { Outlooks, PlaceAnswers } from '../../outlooks.ts';
import { placePath } from '../addresses/paths.ts';
import { type TravelView, travelView } from '../pages/places/sending.ts';
import { bookOf } from '../parts/verdictBook.ts';
import { fittingForms, joinedCrops, type Told } from '../words/verdict.ts';

export interface PlaceFile {
  place: string;
  name: string;
  path: string;
  reasons: readonly Told[];
  kinds: readonly PlaceFileKind[];
  /** Index of the kind of each cultivar. */
  cultivars: Record<string, number>;
  travel: TravelView;
  /** What a visitor's own freeze dates are laid over. */
  basis: Omit<NearestPlace, 'figures'> & { figures: Omit<NearestPlace['figures'], 'published'> };
}

interface PlaceFileKind {
  level: Level;
  /** The level as people read it. */
  words: string;
  ripens: string;
  forms: string;
  /** Forms that suit there, best first. */
  fits: readonly Form[];
  /** Indexes of reasons. */
  because: readonly number[];
  change: readonly number[];
}

export function placeFile(all: Catalogue, outlooks: Outlooks, answers: PlaceAnswers): PlaceFile {
  const { place } = answers;
  const book = bookOf(all, answers);
  const { published: _counted, ...figures } = figuresOfPlace(place);
  const { freeze, annualMinC, chill } = all.climates.get(place.id)!;
  return {
    place: place.id,
    name: place.name,
    path: placePath(place.id),
    reasons: book.reasons,
    kinds: book.kinds.map(({ level, ripens, formWords, forms, because, change }) => ({
      level,
      words: levelWords[level],
      ripens: joinedCrops(ripens),
      forms: formWords,
      fits: fittingForms(forms),
      because,
      change,
    })),
    cultivars: Object.fromEntries(book.kindOf),
    travel: travelView(all, outlooks, answers),
    basis: {
      name: place.name,
      figures,
      climate: { freeze, annualMinC, chill },
      heatStarts: Object.fromEntries(
        [...answers.outlook.species].map(([id, { heatFrom }]) => [id, heatFrom]),
      ),
    },
  };
}
