/** The schema's complaints about a record as problems a grower understands. */

import type { z } from 'zod';
import { dayWords } from './dates.ts';
import { formatOf } from './formats.ts';
import { nearest } from './nearest.ts';
import {
  atKey,
  atValue,
  either,
  type KeyPath,
  meant,
  type Problem,
  plural,
  quote,
  remedyOf,
  show,
} from './problem.ts';
import { rangeWords } from './rangeWords.ts';
import type { RuleId } from './rules.ts';
import { type Wanted, wantedAt } from './schemaWalk.ts';
import { typeWords } from './typeWords.ts';
import { valueName } from './valueName.ts';
import type { WrittenText } from './writtenText.ts';

/** A value that a schema has looked at. */
export interface Checked {
  file: string;
  schema: z.ZodType;
  value: unknown;
  /** Keys that lead from the file's top to the value. */
  base: KeyPath;
  /** How values were written, for remedies that repeat them. */
  written: WrittenText;
}

type Issue = z.core.$ZodIssue;
type Words = Omit<Problem, 'file' | 'spot'>;

/** One problem per complaint; several numbers of one list that are out of range in the same way become one. */
export function schemaProblems(checked: Checked, issues: readonly Issue[]): Problem[] {
  const problems = issues.flatMap(issue => problemsOf(checked, issue));
  return foldLists(withoutSlips(withoutRepeats(problems), checked.schema, checked.base.length));
}

function problemsOf(checked: Checked, issue: Issue): Problem[] {
  const path = issue.path.map(step => (typeof step === 'symbol' ? String(step) : step));
  if (issue.code === 'unrecognized_keys') return issue.keys.map(key => unknownKey(checked, path, key));
  if (issue.code === 'invalid_union') return problemsOf(checked, branchMeant(issue, path, checked.value));
  const found = valueAt(checked.value, path);
  const spot = atValue(...checked.base, ...path);
  return [{ ...wordsOf(checked, issue, path, found), file: checked.file, spot }];
}

/** Of the ways a value may be written, the one that fits the kind of what was written: a list is judged as a list. */
function branchMeant(issue: z.core.$ZodIssueInvalidUnion, path: KeyPath, value: unknown): Issue {
  const isList = Array.isArray(valueAt(value, path));
  const branch = issue.errors.find(errors =>
    errors.some(error => error.path.length > 0 || !('expected' in error)),
  );
  const first = (isList ? branch : undefined)?.[0] ?? issue.errors[0]?.[0];
  return { ...(first as Issue), path: [...path, ...(first?.path ?? [])] };
}

function valueAt(value: unknown, path: KeyPath): unknown {
  let held = value;
  for (const step of path)
    held = held === null || held === undefined ? held : (held as Record<string | number, unknown>)[step];
  return held;
}

function unknownKey({ schema, file, base }: Checked, path: KeyPath, key: string): Problem {
  const keys = wantedAt(schema, path)?.keys ?? [];
  const guess = nearest(key, keys);
  return {
    rule: 'unknown-key',
    file,
    spot: atKey(...base, ...path, key),
    got: key,
    expected: keys.join(', '),
    message: `unknown key ${quote(key)}`,
    remedy: guess ? `did you mean "${guess}"?` : `known keys here are ${keys.join(', ')}.`,
  };
}

function wordsOf(checked: Checked, issue: Issue, path: KeyPath, found: unknown): Words {
  const wanted = wantedAt(checked.schema, path) ?? wantedAt(checked.schema, path.slice(0, -1));
  const name = valueName([...checked.base, ...path]);
  const got = found === undefined ? '' : show(found);
  if (found === undefined && issue.code !== 'custom') return missingKey(checked, path, wanted);
  if (found === null) return emptyValue(checked, path, name, wanted);
  switch (issue.code) {
    case 'invalid_value':
      return { ...notInList(name, found, wanted), got };
    case 'too_small':
    case 'too_big':
      return { ...sizeWords(issue, name, path, found, wanted), got };
    case 'invalid_format':
      return { ...formatWords(issue, name, String(found)), got };
    case 'custom':
      return customWords(issue, got);
    default:
      return {
        ...typeWords(name, found, wanted, checked.written.at([...checked.base, ...path]), keyOf(path)),
        got,
      };
  }
}

/** The last key on a path: the one a list stands under, for an entry of it. */
const keyOf = (path: KeyPath) => String(path.findLast(step => typeof step === 'string') ?? '');

function missingKey({ schema }: Checked, path: KeyPath, wanted: Wanted | null): Words {
  const key = String(path.at(-1) ?? '');
  const expected = wanted?.description ?? '';
  return {
    rule: 'missing-key',
    got: '',
    expected,
    message: `${valueName(path)} is missing`,
    remedy: `${lineToAdd(schema, path, key, wanted)}${expected ? `. ${expected}` : '.'}`,
  };
}

/** Words that are named in a remedy take no more letters than this, or the rest of it would be lost. */
const mostWordLetters = 220;

/** A group is more than a line: the keys it needs stand below it. Where only some words will do, they are named. */
function lineToAdd(schema: z.ZodType, path: KeyPath, key: string, wanted: Wanted | null): string {
  const { needed = [], type } = wanted ?? {};
  const words = wordsAt(schema, path);
  if (needed.length > 0) {
    const named = needed.map(name => {
      const below = wordsAt(schema, [...path, name]);
      return below.length > 0 ? `${name} (${either(below)})` : name;
    });
    const all = named.join(', ').length > mostWordLetters ? needed : named;
    return `add a line "${key}:" and below it, further in, ${all.join(', ')}`;
  }
  if (words.length === 0) return `add a line "${key}: ..."`;
  return type === 'list'
    ? `add a line "${key}: [...]" with one or more of ${words.join(', ')}`
    : `add a line "${key}: ..." with ${either(words)}`;
}

/** Words a value may be, or the entries of a list. */
function wordsAt(schema: z.ZodType, path: KeyPath): string[] {
  const wanted = wantedAt(schema, path);
  return (wanted?.type === 'list' ? wantedAt(schema, [...path, 0]) : wanted)?.words ?? [];
}

function emptyValue({ written, base }: Checked, path: KeyPath, name: string, wanted: Wanted | null): Words {
  const comment = written.commentAfter([...base, ...path]);
  return {
    rule: 'empty-value',
    got: 'nothing',
    expected: wanted?.description ?? '',
    message: comment ? `${name} has no value, since # starts a comment` : `${name} has no value`,
    remedy: comment ? `write ${quote(comment)} in quotes.` : 'write one, or take the line out.',
  };
}

function notInList(name: string, found: unknown, wanted: Wanted | null): Words {
  const words = wanted?.words ?? [];
  const guess = typeof found === 'string' ? nearest(found, words) : null;
  return {
    rule: 'not-in-list',
    expected: either(words),
    message: `${name} is ${show(found)}, which is not in the list`,
    remedy: remedyOf(meant(guess), `Write ${either(words)}.`),
  };
}

function sizeWords(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  name: string,
  path: KeyPath,
  found: unknown,
  wanted: Wanted | null,
): Words {
  if (Array.isArray(found)) return listWords(issue, name, found.length);
  if (typeof found !== 'string')
    return rangeWords(name, path, Number(found), wanted?.low ?? null, wanted?.high ?? null);
  if (issue.code === 'too_small') {
    return {
      rule: 'text-empty',
      expected: wanted?.description ?? '',
      message: `${name} is blank`,
      remedy: 'write a text, or take the line out.',
    };
  }
  const letters = found.trim().length;
  const most = Number(issue.maximum);
  return {
    rule: 'text-too-long',
    expected: `at most ${most} letters`,
    message: `${name} has ${letters} letters where ${most} fit`,
    remedy: `shorten it by ${letters - most}.`,
  };
}

/** Months of a year. */
const yearLength = 12;

function listWords(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  name: string,
  length: number,
): Words {
  const bound = Number(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  const many = plural(length, 'entry', 'entries');
  const monthly = issue.exact === true && bound === yearLength;
  return {
    rule: 'list-length',
    expected: issue.exact
      ? `${bound} entries`
      : `at ${issue.code === 'too_small' ? 'least' : 'most'} ${bound}`,
    message: `${name} has ${many} where ${issue.exact ? '' : issue.code === 'too_small' ? 'at least ' : 'at most '}${bound} must be`,
    remedy: monthly
      ? 'write one number for each month, January to December.'
      : length < bound
        ? `add ${bound - length}.`
        : `take ${length - bound} out.`,
  };
}

function formatWords(issue: z.core.$ZodIssueInvalidStringFormat | Issue, name: string, found: string): Words {
  const { format, pattern } = issue as { format: string; pattern?: string };
  if (format === 'date') return { rule: 'bad-date', expected: 'a day, YYYY-MM-DD', ...dayWords(name, found) };
  const known = formatOf(format, pattern);
  return {
    rule: known.rule,
    expected: known.expected,
    message: `${name} is ${quote(found)}, not ${known.name}`,
    remedy: known.remedy(found),
  };
}

function customWords(issue: z.core.$ZodIssueCustom, got: string): Words {
  const { rule, expected } = issue.params as { rule: RuleId; expected: string };
  return { rule, got, expected, message: issue.message, remedy: 'keep one of the two.' };
}

/** A key that is missing because it is misspelled is reported once, where it stands. */
function withoutSlips(problems: readonly Problem[], schema: z.ZodType, depth: number): Problem[] {
  const meantKeys = new Set(
    problems.flatMap(({ rule, spot, got }) => {
      if (rule !== 'unknown-key' || spot.kind !== 'path') return [];
      const group = spot.path.slice(0, -1);
      const guess = nearest(got ?? '', wantedAt(schema, group.slice(depth))?.keys ?? []);
      return guess === null ? [] : [[...group, guess].join('.')];
    }),
  );
  return problems.filter(
    ({ rule, spot }) => rule !== 'missing-key' || spot.kind !== 'path' || !meantKeys.has(spot.path.join('.')),
  );
}

/** A number below two lower bounds is complained about twice. */
function withoutRepeats(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return problems.filter(({ rule, spot, message }) => {
    const key = JSON.stringify([rule, spot, message]);
    return !seen.has(key) && seen.add(key);
  });
}

/** Six months out of range in the same way are one slip: the first is reported, with how many more there are. */
function foldLists(problems: Problem[]): Problem[] {
  const first = new Map<string, { problem: Problem; more: number }>();
  const kept: Problem[] = [];
  for (const problem of problems) {
    const { spot, rule } = problem;
    const inList = spot.kind === 'path' && spot.path.length > 1 && typeof spot.path.at(-1) === 'number';
    const key = inList && rule === 'out-of-range' ? spot.path.slice(0, -1).join('.') : null;
    const earlier = key === null ? undefined : first.get(key);
    if (earlier) {
      earlier.more += 1;
      continue;
    }
    if (key !== null) first.set(key, { problem, more: 0 });
    kept.push(problem);
  }
  for (const { problem, more } of first.values()) {
    if (more > 0) problem.message += ` (and ${more} more in this list)`;
  }
  return kept;
}
