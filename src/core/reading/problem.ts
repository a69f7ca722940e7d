/** A problem before its place in the file is known. Places are looked up once all problems are known, and only for files that have some. */

import type { RuleId } from './rules.ts';
import { shortened, visible } from './visible.ts';

/** Keys and list places that lead to a value. */
export type KeyPath = readonly (string | number)[];

/** Where a problem is. Exactly one of: a path in YAML, a cell of a table, a line and column already known, or the whole file. */
export type Spot =
  | { kind: 'path'; path: KeyPath; at: 'key' | 'value' }
  | { kind: 'cell'; line: number; column: string }
  | { kind: 'known'; line: number; column: number; path?: KeyPath }
  | { kind: 'file' };

export interface Problem {
  rule: RuleId;
  /** Path below the content folder. */
  file: string;
  spot: Spot;
  /** What was found, as text. */
  got?: string;
  /** What should stand there. */
  expected?: string;
  /** What is wrong: a clause without a full stop. `{see}` in it becomes the place of `see`, such as lots/2026.yaml:14. */
  message: string;
  /** Another place that the message speaks of. */
  see?: { file: string; path: KeyPath };
  /** What to do: starts in lower case after the message and a semicolon, ends with a full stop or question mark. */
  remedy: string;
}

/** The value at a path. */
export function atValue(...path: (string | number)[]): Spot {
  return { kind: 'path', path, at: 'value' };
}

/** The key at a path. */
export function atKey(...path: (string | number)[]): Spot {
  return { kind: 'path', path, at: 'key' };
}

/** A cell of a table, by line and column name. */
export function atCell(line: number, column: string): Spot {
  return { kind: 'cell', line, column };
}

/** A line and column already known, both 1-based. */
export function atLine(line: number, column = 1): Spot {
  return { kind: 'known', line, column };
}

export const wholeFile: Spot = { kind: 'file' };

const longestQuote = 60;

/** Anything found, short enough for a message; text in quotes. */
export function show(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (typeof value === 'number' && !Number.isFinite(value)) return 'no number';
  if (typeof value === 'string') return quote(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object') return 'a group of keys';
  return String(value);
}

/** Text in double quotes, cut when long. What cannot be seen is written out: a line break as \n. */
export function quote(text: string): string {
  return `"${shortened(visible(text), longestQuote)}"`;
}

/** `a`, `a or b`, `a, b or c`. */
export function either(words: readonly string[]): string {
  return joined(words, 'or');
}

/** `a`, `a and b`, `a, b and c`. */
export function both(words: readonly string[]): string {
  return joined(words, 'and');
}

function joined(words: readonly string[], last: string): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** `did you mean "x"? ` or nothing, to start a remedy with. */
export function meant(found: string | null): string {
  return found === null ? '' : `did you mean "${found}"? `;
}

/** First letter large when the text follows a question mark, small when it follows the message. */
export function remedyOf(guess: string, rest: string): string {
  return guess === '' ? smallFirst(rest) : `${guess}${largeFirst(rest)}`.trim();
}

/** The text with a small first letter; abbreviations such as NOAA stay. */
export function smallFirst(text: string): string {
  return /^[A-Z][^A-Z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

export function largeFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `1 plant`, `2 plants`. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
