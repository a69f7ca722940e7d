/** What the browser fetches about a place that a visitor has chosen: `/places/ID/verdicts.json`. */

import type { Catalogue } from '../../core/catalogue.ts';
import { figuresOfPlace } from '../../core/climate/place.ts';
import type { Level } from '../../core/match/answers.ts';
import type { NearestPlace } from '../../core/match/ownFigures.ts';
import { levelWords } from '../../core/match/words.ts';
import type { Form } from '../../core/records/common.ts';
import type { Outlooks, PlaceAnswers } from '../../outlooks.ts';
import { placePath } from '../addresses/paths.ts';
import { type SendingView, sendingView, type TravelView } from '../pages/places/sending.ts';
import { listedCultivars } from '../parts/raised.ts';
import { bookOf, rankedIn } from '../parts/verdictBook.ts';
import { fittingForms, joinedCrops, type Told } from '../words/verdict.ts';
import { type BestTree, bestNamed } from './best.ts';

export interface PlaceFile {
  place: string;
  name: string;
  path: string;
  reasons: readonly Told[];
  kinds: readonly PlaceFileKind[];
  /** Index of the kind of each cultivar. */
  cultivars: Record<string, number>;
  /** The cultivars that do best there, of those that are raised. */
  best: BestTree[];
  travel: TravelView;
  /** Weeks of the coming year in which each form is sent; empty where the yard does not send. */
  weeks: SendingView['table'];
  /** What prices of delivery go by. */
  region: string;
  country: string;
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
  const names = new Map(listedCultivars(all).map(({ cultivar }) => [cultivar.id, cultivar.name]));
  const { now, table } = sendingView(all, outlooks, answers);
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
    best: rankedIn(book, [...names.keys()])
      .slice(0, bestNamed)
      .map(id => ({ id, name: names.get(id)! })),
    travel: now,
    weeks: table,
    region: place.region,
    country: place.country,
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
