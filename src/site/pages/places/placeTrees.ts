/** A place's page: which cultivars do well there, when they ripen, and the best lot of each that is ready and suits. */

import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import type { Level } from '../../../core/match/answers.ts';
import { levels } from '../../../core/match/answers.ts';
import { readyAndSuits } from '../../../core/match/ranking.ts';
import { levelWords } from '../../../core/match/words.ts';
import { priceInWords } from '../../../core/money.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { cultivarPath, lotPath } from '../../addresses/paths.ts';
import { type FruitMark, fruitMark } from '../../drawing/fruitMarks.ts';
import type { CropBar } from '../../drawing/seasonBar.ts';
import { memoize } from '../../memo.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { bookOf, type Kind, kindIn, rankedIn } from '../../parts/verdictBook.ts';
import { joinedCrops } from '../../words/verdict.ts';
import { formWords } from '../../words/words.ts';
import { offered, speciesName } from '../stock/stock.ts';
import type { TravelView } from './sending.ts';

/** Cultivars ranked on a place's page. */
const rankedAtMost = 60;

/** The lot to take of a cultivar: ready today, in the form that suits a buyer there best, and of these the cheapest. */
interface BestLot {
  lot: string;
  path: string;
  /** `Dormant in a pot, $65, sent by forecast`; without price and sending where the yard does not send. */
  words: string;
}

export interface RankedRow {
  id: string;
  path: string;
  name: string;
  species: string;
  mark: FruitMark;
  ripens: string;
  bars: readonly CropBar[];
  /** Null where no lot is ready in a form that suits. */
  best: BestLot | null;
}

/** Cultivars of one verdict. */
export interface RankedGroup {
  level: Level;
  words: string;
  rows: RankedRow[];
}

export interface RankedCultivars {
  /** Best verdict first; those without a cultivar are left out. */
  groups: RankedGroup[];
  /** Levels of those that are not shown. */
  rest: { words: string; count: number }[];
}

const entriesById = memoize(
  ({ cultivars }: Catalogue) => new Map(cultivars.map(entry => [entry.cultivar.id, entry])),
);

/** Lots that are ready today in some form, with the forms they are ready in. */
export const readyLots = memoize((all: Catalogue) =>
  offered(all).flatMap((entry: LotEntry) => {
    const ready = entry.forms.filter(({ state }) => state === 'ready').map(({ form }) => form);
    return ready.length === 0 ? [] : [{ entry, ready }];
  }),
);

const readyByCultivar = memoize((all: Catalogue) =>
  Map.groupBy(readyLots(all), ({ entry }) => entry.cultivar.id),
);

function bestLot(
  all: Catalogue,
  cultivar: string,
  { level, forms }: Kind,
  travel: TravelView,
): BestLot | null {
  const fitting = (readyByCultivar(all).get(cultivar) ?? []).flatMap(({ entry, ready }) => {
    const advice = readyAndSuits({ level, forms: [...forms] }, ready);
    if (advice === null) return [];
    const price = entry.tiers[advice.form]?.answer.price ?? null;
    return [{ entry, form: advice.form, rank: forms.findIndex(({ form }) => form === advice.form), price }];
  });
  const [best] = fitting.sort(
    (a, b) =>
      a.rank - b.rank ||
      (a.price?.minor ?? Number.POSITIVE_INFINITY) - (b.price?.minor ?? Number.POSITIVE_INFINITY) ||
      (a.entry.lot.id < b.entry.lot.id ? -1 : 1),
  );
  if (best === undefined) return null;
  const { entry, form, price } = best;
  const sent = travel.route ? travel.forms.find(each => each.form === form)?.short : null;
  const told = [formWords[form], travel.route && price ? priceInWords(price) : null, sent ?? null];
  return {
    lot: entry.lot.id,
    path: lotPath(entry.lot.id),
    words: told.filter(words => words !== null).join(', '),
  };
}

/** Cultivars of a place by verdict, best first. */
export function rankedCultivars(all: Catalogue, answers: PlaceAnswers, travel: TravelView): RankedCultivars {
  const book = bookOf(all, answers);
  const entries = entriesById(all);
  const ranked = rankedIn(
    book,
    listedCultivars(all).map(({ cultivar }) => cultivar.id),
  );
  const rowOf = (id: string): RankedRow => {
    const { cultivar, species } = entries.get(id)!;
    const kind = kindIn(book, id);
    return {
      id,
      path: cultivarPath(id),
      name: cultivar.name,
      species: speciesName(species),
      mark: fruitMark(all, cultivar, species),
      ripens: joinedCrops(kind.ripens),
      bars: kind.bars,
      best: bestLot(all, id, kind, travel),
    };
  };
  const levelOf = (id: string) => kindIn(book, id).level;
  const shown = ranked.slice(0, rankedAtMost);
  const groups = levels
    .map(level => ({
      level,
      words: levelWords[level],
      rows: shown.filter(id => levelOf(id) === level).map(rowOf),
    }))
    .filter(({ rows }) => rows.length > 0);
  const further = Map.groupBy(ranked.slice(rankedAtMost), levelOf);
  return {
    groups,
    rest: [...further].map(([level, ids]) => ({ words: levelWords[level], count: ids.length })),
  };
}
