/** The verdict on a cultivar in a place, in the words people read: the same on a built page and in a visitor's browser. */

import type { FormAdvice, Level, Match, RipeningVerdict } from '../../core/match/answers.ts';
import { cropWords, levelWords, ripeningOddsWords, spreadInWords } from '../../core/match/words.ts';
import type { Form, Reason } from '../../core/records/common.ts';
import { formWords, listInWords, lowerFirst, sentence, standingInWords } from './words.ts';

/** What is said and how it is known: `published: NOAA ...`. */
export type Told = readonly [text: string, known: string];

export interface Verdict {
  level: Level;
  words: string;
  /** When each crop ripens. */
  ripens: string;
  /** Which form of sale suits a buyer there now. */
  forms: string;
  /** Forms that suit there, best first. */
  fits: readonly Form[];
  /** Why, most telling first, and what would make it better. */
  because: Told[];
  change: Told[];
}

/** What each level means, for people who meet the words the first time. */
export const levelMeanings: Readonly<Record<Level, string>> = {
  'at-home': 'lives in the ground with no more than mulch, and crops in four years of five or more',
  'with-care': 'lives and crops in most years with a wrapped trunk, a sheltered spot or some loss to rain',
  'in-a-pot': 'crops in most years when it winters in storage, or is woken early under cover',
  'a-gamble': 'crops in some years, or lacks winter rest',
  'not-here': 'hardly ever ripens a crop',
};

export function told({ text, standing, source }: Reason): Told {
  return [text, standingInWords(standing, source)];
}

/** The forms that suit a buyer, best first. */
export function fittingForms(forms: readonly FormAdvice[]): Form[] {
  return forms.filter(({ fit }) => fit !== 'poor').map(({ form }) => form);
}

/** `Dormant in a pot or bare-root; leafed in a pot will do`. */
export function formsInWords(forms: readonly FormAdvice[]): string {
  const named = (fit: FormAdvice['fit']) =>
    listInWords(
      forms.filter(advice => advice.fit === fit).map(({ form }) => lowerFirst(formWords[form])),
      'or',
    );
  const [best, fine] = [named('best'), named('fine')];
  if (best === '' && fine === '') return 'None just now';
  if (best === '') return sentence(fine);
  return fine === '' ? sentence(best) : `${sentence(best)}; ${fine} will do`;
}

/** When one crop ripens and how surely: `main crop August 14 to September 7, in most years`. */
export function ripensInWords({ crop, blocked, word, dates, headStart }: RipeningVerdict): string {
  const name = cropWords[crop];
  if (blocked === 'needs-wasp') return `${name} sets no fruit without the fig wasp`;
  if (blocked === 'no-figure') return `${name} not known`;
  if (dates !== null && word !== 'not-outdoors') {
    return `${name} ${spreadInWords(dates)}, ${ripeningOddsWords[word]}`;
  }
  if (headStart.dates !== null && headStart.word !== 'not-outdoors') {
    return `${name} with a head start under cover ${spreadInWords(headStart.dates)}, ${ripeningOddsWords[headStart.word]}`;
  }
  return `${name} does not ripen outdoors`;
}

/** Several crops in a line. */
export function joinedCrops(crops: readonly string[]): string {
  return sentence(crops.join('; '));
}

export function verdictOf({ level, ripening, forms, because, whatWouldChangeIt }: Match): Verdict {
  return {
    level,
    words: levelWords[level],
    ripens: joinedCrops(ripening.map(ripensInWords)),
    forms: formsInWords(forms),
    fits: fittingForms(forms),
    because: because.map(told),
    change: whatWouldChangeIt.map(told),
  };
}
