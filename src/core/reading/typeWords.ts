/** A value of the wrong kind: text for a number, a number for text, one thing for a list. */

import { numberRemedy } from './numberRemedy.ts';
import { type Problem, quote, show } from './problem.ts';
import type { Wanted } from './schemaWalk.ts';

const kinds: Record<Wanted['type'], string> = {
  text: 'a text',
  number: 'a number',
  whole: 'a whole number',
  list: 'a list',
  group: 'a group of keys',
  word: 'a word',
  figure: 'one number or [low, high]',
  other: 'another kind of value',
};

/**
 * `source` is the value as it stands in the file, for scalars; so that 45.50 does not come back as 45.5. `key` is the key or column it stands
 * under, which may say its unit.
 */
export function typeWords(
  name: string,
  found: unknown,
  wanted: Wanted | null,
  source: string | null,
  key = '',
): Omit<Problem, 'file' | 'spot'> {
  const type = wanted?.type ?? 'other';
  const expected = kinds[type];
  if (type === 'whole' && typeof found === 'number' && Number.isFinite(found)) {
    return {
      rule: 'not-whole',
      expected,
      message: `${name} is ${found}, not a whole number`,
      remedy: 'write a number without decimals.',
    };
  }
  return {
    rule: 'wrong-type',
    expected,
    message: `${name} is ${kindOf(found)} where ${expected} is needed`,
    remedy: remedyFor(type, found, source, wanted, key),
  };
}

function kindOf(found: unknown): string {
  if (typeof found === 'string') return `the text ${quote(found)}`;
  if (typeof found === 'number' && Number.isFinite(found)) return `the number ${found}`;
  if (typeof found === 'boolean') return `the word ${found}, which stands for yes or no,`;
  return show(found);
}

function remedyFor(
  type: Wanted['type'],
  found: unknown,
  source: string | null,
  wanted: Wanted | null,
  key: string,
): string {
  const scalar = typeof found === 'string' || typeof found === 'number' || typeof found === 'boolean';
  if (type === 'text' || type === 'word') {
    return scalar ? `put it in quotes: "${source ?? found}".` : 'write one text on the same line.';
  }
  if (type === 'number' || type === 'whole' || type === 'figure') {
    if (typeof found === 'string') return numberRemedy(found, key);
    return type === 'figure' ? 'write one number, or [low, high].' : 'write one number.';
  }
  if (type === 'list') {
    return scalar
      ? `put it in square brackets: [${source ?? found}].`
      : 'start each entry on a line of its own with a hyphen.';
  }
  if (type === 'group' && wanted && wanted.keys.length > 0) {
    return `write its keys on lines of their own, indented: ${wanted.keys.join(', ')}.`;
  }
  return 'write its keys on lines of their own, indented.';
}
