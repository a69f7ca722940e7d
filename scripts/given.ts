/** Values given by flags, with a plain word on those that are wrong. */

import { nearest } from '../src/core/reading/nearest.ts';
import { either } from '../src/core/reading/problem.ts';
import { UsageError } from './command.ts';

/** One word of a list. Throws a UsageError with the nearest one otherwise. */
export function wordGiven<T extends string>(text: string, words: readonly T[], what: string): T {
  const word = words.find(each => each === text.trim());
  if (word !== undefined) return word;
  const guess = nearest(text, words);
  throw new UsageError(
    `"${text}" is no ${what}; ${guess ? `did you mean "${guess}"? Known are` : 'write'} ${either(words)}.`,
  );
}

/** Words separated by commas. */
export function listGiven<T extends string>(text: string, words: readonly T[], what: string): T[] {
  return text.split(',').map(each => wordGiven(each, words, what));
}

/** A whole number from `least` up. */
export function countGiven(text: string, flag: string, least = 1): number {
  if (!/^\d{1,6}$/.test(text) || Number(text) < least)
    throw new UsageError(`${flag} "${text}" is no whole number from ${least} up.`);
  return Number(text);
}

/** A length in mm. */
export function millimetersGiven(text: string, flag: string): number {
  if (!/^\d{1,3}(?:\.\d+)?$/.test(text))
    throw new UsageError(`${flag} "${text}" is no length in mm; write it as 40.`);
  return Number(text);
}
