/**
 * The verdicts on all cultivars in one place. Many cultivars are answered alike, and most reasons come again and again, so each
 * kind of answer and each reason is held once; a thousand cultivars take little more room than a hundred.
 */

import type { Catalogue } from '../../core/catalogue.ts';
import type { FormAdvice, Level, Match, RipeningVerdict } from '../../core/match/answers.ts';
import { cropChance, ranked } from '../../core/match/ranking.ts';
import type { MatchedCultivar } from '../../core/match/subject.ts';
import { levelWords } from '../../core/match/words.ts';
import type { Reason } from '../../core/records/common.ts';
import type { PlaceAnswers } from '../../outlooks.ts';
import { type CropBar, cropBars } from '../drawing/seasonBar.ts';
import { memoize } from '../memo.ts';
import {
  fittingForms,
  formsInWords,
  joinedCrops,
  ripensInWords,
  type Told,
  told,
  type Verdict,
} from '../words/verdict.ts';

export interface Kind {
  readonly level: Level;
  /** One for each crop. */
  readonly ripens: readonly string[];
  /** Which form suits a buyer there now. */
  readonly formWords: string;
  /** Indexes of reasons. */
  readonly because: readonly number[];
  readonly change: readonly number[];
  /** Best chance of a crop, for ranking. */
  readonly chance: number;
  readonly bars: CropBar[];
  readonly forms: readonly FormAdvice[];
}

export interface VerdictBook {
  readonly reasons: readonly Told[];
  readonly kinds: readonly Kind[];
  /** Index of the kind of each cultivar, by id. */
  readonly kindOf: ReadonlyMap<string, number>;
}

/** Numbers things by identity. */
function numbering() {
  const numbers = new Map<unknown, number>();
  return (thing: unknown): number => {
    const known = numbers.get(thing);
    if (known !== undefined) return known;
    numbers.set(thing, numbers.size);
    return numbers.size - 1;
  };
}

/**
 * Matches with the same key say the same: verdicts that cultivars share are the same objects, and what else goes into the words
 * stands in the key. A cultivar tried in such a place is answered on its own.
 */
function keyOf(match: Match, { id, species, pollination }: MatchedCultivar, number: (of: unknown) => number) {
  if (match.trials.length > 0) return id;
  const { level, ripening, winter, wet } = match;
  return `${level} ${species} ${pollination} ${number(winter)} ${number(wet)} ${ripening.map(number).join(' ')}`;
}

/** Collects reasons, each said once. */
function reasonList() {
  const reasons: Told[] = [];
  const byText = new Map<string, number>();
  const indexOf = memoize((reason: Reason): number => {
    const said = told(reason);
    const key = said.join('\n');
    const known = byText.get(key);
    if (known !== undefined) return known;
    byText.set(key, reasons.length);
    return reasons.push(said) - 1;
  });
  return { reasons, indexOf };
}

function makeBook(
  cultivars: readonly MatchedCultivar[],
  { match: matchOf, place }: PlaceAnswers,
): VerdictBook {
  const number = numbering();
  const { reasons, indexOf } = reasonList();
  const ripens = memoize(ripensInWords);
  const forms = memoize(formsInWords);
  const bars = memoize((crop: RipeningVerdict) => cropBars([crop], place.lat));
  const kinds: Kind[] = [];
  const byKey = new Map<string, number>();
  const kindOf = new Map<string, number>();
  for (const cultivar of cultivars) {
    const match = matchOf(cultivar);
    const key = keyOf(match, cultivar, number);
    let kind = byKey.get(key);
    if (kind === undefined) {
      kind =
        kinds.push({
          level: match.level,
          ripens: match.ripening.map(ripens),
          formWords: forms(match.forms),
          because: match.because.map(indexOf),
          change: match.whatWouldChangeIt.map(indexOf),
          chance: cropChance(match),
          bars: match.ripening.flatMap(bars),
          forms: match.forms,
        }) - 1;
      byKey.set(key, kind);
    }
    kindOf.set(cultivar.id, kind);
  }
  return { reasons, kinds, kindOf };
}

const kept = new WeakMap<PlaceAnswers, VerdictBook>();

/** The book of a place, made once. */
export function bookOf({ cultivars }: Pick<Catalogue, 'cultivars'>, answers: PlaceAnswers): VerdictBook {
  let book = kept.get(answers);
  if (book === undefined) {
    book = makeBook(
      cultivars.map(({ cultivar }) => cultivar),
      answers,
    );
    kept.set(answers, book);
  }
  return book;
}

/** The kind of answer on a cultivar. Throws a RangeError for one that is not in the book. */
export function kindIn({ kinds, kindOf }: VerdictBook, cultivar: string): Kind {
  const kind = kinds[kindOf.get(cultivar) ?? -1];
  if (kind === undefined) throw new RangeError(`no verdict on ${cultivar}`);
  return kind;
}

/** The whole verdict on a cultivar. */
export function verdictIn(book: VerdictBook, cultivar: string): Verdict {
  const { level, ripens, formWords, forms, because, change } = kindIn(book, cultivar);
  const toldAt = (index: number) => book.reasons[index]!;
  return {
    level,
    words: levelWords[level],
    ripens: joinedCrops(ripens),
    forms: formWords,
    fits: fittingForms(forms),
    because: because.map(toldAt),
    change: change.map(toldAt),
  };
}

/** Orders ids of cultivars: best level first, then the likelier crop, then as given. */
export function rankedIn(book: VerdictBook, cultivars: readonly string[]): string[] {
  return ranked(cultivars, id => kindIn(book, id));
}
