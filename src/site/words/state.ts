/** How a form of sale stands today, in words. */

import { type Day, type DayRange, dayInWords, dayParts, rangeInWords } from '../../core/days.ts';
import type { FormAnswer, FormState } from '../../core/lots/answers.ts';
import type { SentNow } from '../parts/sentNow.ts';
import { blockedWords } from './words.ts';

export interface StateView {
  state: FormState;
  words: string;
}

/** Leaves the year off when it is the year of `asOf`. */
function withoutThisYear(words: string, last: Day, asOf: Day): string {
  const { year } = dayParts(last);
  return year === dayParts(asOf).year ? words.replace(`, ${year}`, '') : words;
}

/** A day still to come: `April 9`, with its year when that is not the year of `asOf`. */
export function comingDay(on: Day, asOf: Day): string {
  return withoutThisYear(dayInWords(on), on, asOf);
}

/**
 * When a form is likely to open. The range is the 10 % and the 90 % day of the opening itself, so `between` is said,
 * never `from ... to`, which would read as the time it is on sale.
 */
export function openingInWords(range: DayRange, asOf: Day): string {
  if (range.to <= asOf) return 'Any day now';
  if (range.from <= asOf) return `Any day, by ${comingDay(range.to, asOf)}`;
  if (range.from === range.to) return `About ${comingDay(range.to, asOf)}`;
  const sameYear = dayParts(range.from).year === dayParts(range.to).year;
  const words = rangeInWords(range).replace(' to ', ' and ');
  return `Between ${sameYear ? withoutThisYear(words, range.to, asOf) : words}`;
}

/** Of a tree that is ready: how it leaves. `Ready now` where parcels leave anyway. */
function readyWords({ state, from }: SentNow, asOf: Day): string {
  if (state === 'open') return 'Ready now';
  if (state === 'by-forecast') return 'Ready, sent by forecast';
  if (from === null) return 'Ready, but not sent in the coming year';
  const how = from.state === 'by-forecast' ? 'sent by forecast' : 'sent';
  return `Ready, ${how} from ${comingDay(from.monday, asOf)}`;
}

/** The state of a form in words a buyer reads; a blocked form says what stops it, a ready one how it is sent. */
export function stateView(answer: FormAnswer, asOf: Day, sent: SentNow): StateView {
  const { state } = answer;
  if (state === 'ready') return { state, words: readyWords(sent, asOf) };
  if (state === 'look') return { state, words: 'Awaiting a check' };
  if (state === 'opens') {
    return { state, words: answer.range ? openingInWords(answer.range, asOf) : 'Later, no day yet' };
  }
  const gate = answer.gates.find(candidate => candidate.state === 'blocked');
  return { state, words: gate ? blockedWords[gate.name] : 'Not available now' };
}
