/** What may stand in a cell of a table, and reading it. */

import { parseDay } from '../days.ts';
import { idPattern } from '../records/common.ts';
import { dayWords } from './dates.ts';
import { formatOf } from './formats.ts';
import { nearest } from './nearest.ts';
import { either, meant, type Problem, quote, remedyOf } from './problem.ts';
import { rangeWords } from './rangeWords.ts';
import type { Wanted } from './schemaWalk.ts';
import { typeWords } from './typeWords.ts';

export type CellKind =
  | { kind: 'id' }
  | { kind: 'day' }
  | { kind: 'count'; most: number }
  | { kind: 'measure'; low: number; high: number }
  | { kind: 'word'; words: readonly string[] }
  | { kind: 'text' };

type Words = Omit<Problem, 'file' | 'spot'>;
export type CellReading = { value: string | number | null } | { words: Words };

const plainNumber = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)$/;

/** Reads a cell; a blank one has no value. */
export function readCell(name: string, cell: string, kind: CellKind): CellReading {
  if (cell === '') return { value: null };
  const called = `"${name}"`;
  switch (kind.kind) {
    case 'text':
      return { value: cell };
    case 'id':
      return idPattern.test(cell) ? { value: cell } : { words: badId(called, cell) };
    case 'day': {
      const day = parseDay(cell);
      if (day !== null) return { value: day };
      return {
        words: {
          rule: 'bad-date',
          got: quote(cell),
          expected: 'a day, YYYY-MM-DD',
          ...dayWords(called, cell),
        },
      };
    }
    case 'word':
      return kind.words.includes(cell) ? { value: cell } : { words: notInList(called, cell, kind.words) };
    default:
      return numberIn(name, cell, kind);
  }
}

function badId(called: string, cell: string): Words {
  const format = formatOf('regex', idPattern.toString());
  return {
    rule: format.rule,
    got: quote(cell),
    expected: format.expected,
    message: `${called} is ${quote(cell)}, not ${format.name}`,
    remedy: format.remedy(cell),
  };
}

function notInList(called: string, cell: string, words: readonly string[]): Words {
  return {
    rule: 'not-in-list',
    got: quote(cell),
    expected: either(words),
    message: `${called} is ${quote(cell)}, which is not in the list`,
    remedy: remedyOf(meant(nearest(cell, words)), `Write ${either(words)}.`),
  };
}

function numberIn(
  name: string,
  cell: string,
  kind: Extract<CellKind, { kind: 'count' | 'measure' }>,
): CellReading {
  const called = `"${name}"`;
  const whole = kind.kind === 'count';
  const wanted = { type: whole ? 'whole' : 'number', keys: [] } as unknown as Wanted;
  if (!plainNumber.test(cell)) {
    return { words: { ...typeWords(called, cell, wanted, cell, name), got: quote(cell) } };
  }
  const value = Number(cell);
  if (whole && !Number.isInteger(value)) {
    return { words: { ...typeWords(called, value, wanted, cell, name), got: cell } };
  }
  const [low, high] = kind.kind === 'count' ? [0, kind.most] : [kind.low, kind.high];
  if (value < low || value > high) return { words: rangeWords(called, [name], value, low, high) };
  return { value: value + 0 };
}
