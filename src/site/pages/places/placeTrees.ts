/** A place's page: which cultivars do well there, when they ripen, and which lots are ready and suit. */

import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import type { Level } from '../../../core/match/answers.ts';
import { readyAndSuits } from '../../../core/match/ranking.ts';
import { levelWords } from '../../../core/match/words.ts';
import type { Form } from '../../../core/records/common.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { cultivarPath } from '../../addresses/paths.ts';
import type { CropBar } from '../../drawing/seasonBar.ts';
import { oncePer } from '../../memo.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { bookOf, kindIn, rankedIn, verdictIn } from '../../parts/verdictBook.ts';
import { joinedCrops, type Told } from '../../words/verdict.ts';
import { offered, rowOfForms, type StockRow, speciesName } from '../stock/stock.ts';
import type { TravelView } from './sending.ts';

/** Cultivars ranked on a place's page, and those among them that come with their reasons. */
const rankedAtMost = 60;
const withReasonsAtMost = 24;

export interface RankedRow {
  path: string;
  name: string;
  species: string;
  level: Level;
  words: string;
  ripens: string;
  bars: readonly CropBar[];
  /** Null further down the list; the cultivar's own page has them. */
  reasons: { because: Told[]; change: Told[] } | null;
}

export interface RankedCultivars {
  rows: RankedRow[];
  /** Levels of those that are not shown. */
  rest: { words: string; count: number }[];
}

const entriesById = oncePer(
  ({ cultivars }: Catalogue) => new Map(cultivars.map(entry => [entry.cultivar.id, entry])),
);

/** Cultivars of a place, best first. */
export function rankedCultivars(all: Catalogue, answers: PlaceAnswers): RankedCultivars {
  const book = bookOf(all, answers);
  const entries = entriesById(all);
  const ranked = rankedIn(
    book,
    listedCultivars(all).map(({ cultivar }) => cultivar.id),
  );
  const rows = ranked.slice(0, rankedAtMost).map((id, rank): RankedRow => {
    const { cultivar, species } = entries.get(id)!;
    const { level, ripens, bars } = kindIn(book, id);
    const { because, change } = verdictIn(book, id);
    return {
      path: cultivarPath(id),
      name: cultivar.name,
      species: speciesName(species),
      level,
      words: levelWords[level],
      ripens: joinedCrops(ripens),
      bars,
      reasons: rank < withReasonsAtMost ? { because, change } : null,
    };
  });
  const counts = new Map<Level, number>();
  for (const id of ranked.slice(rankedAtMost)) {
    const { level } = kindIn(book, id);
    counts.set(level, (counts.get(level) ?? 0) + 1);
  }
  return { rows, rest: [...counts].map(([level, count]) => ({ words: levelWords[level], count })) };
}

/** Lots shown at most as ready and suiting. */
const readyAtMost = 24;

export interface ReadyHere {
  rows: StockRow[];
  /** All that are ready and suit. */
  total: number;
}

/** Lots that are ready today in some form, with the forms they are ready in. */
export const readyLots = oncePer((all: Catalogue) =>
  offered(all).flatMap((entry: LotEntry) => {
    const ready = entry.forms.filter(({ state }) => state === 'ready').map(({ form }) => form);
    return ready.length === 0 ? [] : [{ entry, ready }];
  }),
);

/** The row of a ready lot with how it is sent to the place in place of how it leaves the yard. */
function sentHere(row: StockRow, travel: TravelView): StockRow {
  const wordsOf = (form: Form) => {
    if (!travel.route) return 'Ready, not sent there';
    const words = travel.forms.find(each => each.form === form)?.short;
    return words === undefined ? 'Ready' : `Ready, ${words}`;
  };
  return { ...row, lines: row.lines.map(line => ({ ...line, words: wordsOf(line.form) })) };
}

/** Lots that are ready today in a form that suits a buyer there, of cultivars that do well there; best cultivars first. */
export function readyHere(all: Catalogue, answers: PlaceAnswers, travel: TravelView): ReadyHere {
  const book = bookOf(all, answers);
  const fitting = readyLots(all).flatMap(({ entry, ready }) => {
    const { level, forms } = kindIn(book, entry.cultivar.id);
    const advice = readyAndSuits({ level, forms: [...forms] }, ready);
    return advice === null ? [] : [{ entry, form: advice.form }];
  });
  const rank = new Map(
    rankedIn(book, [...new Set(fitting.map(({ entry }) => entry.cultivar.id))]).map((id, at) => [id, at]),
  );
  fitting.sort((a, b) => rank.get(a.entry.cultivar.id)! - rank.get(b.entry.cultivar.id)!);
  return {
    rows: fitting
      .slice(0, readyAtMost)
      .map(({ entry, form }) => sentHere(rowOfForms(all, entry, [form]), travel)),
    total: fitting.length,
  };
}
