import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { readYaml } from './yamlText.ts';

function valueIn(text: string): unknown {
  const read = readYaml({ file: 'a.yaml', text, firstLine: 1 });
  if ('problems' in read) throw new Error(read.problems[0]?.message);
  return read.value;
}

function rulesOf(text: string): string[] {
  const read = readYaml({ file: 'a.yaml', text, firstLine: 1 });
  return 'problems' in read ? read.problems.map(({ rule }) => rule) : [];
}

describe('YAML 1.2 core schema (YAML 1.2.2, section 10.3)', () => {
  test('days, yes and no, and numbers that are not decimal', () => {
    expect(valueIn('a: 2026-03-01\nb: yes\nc: no\nd: 0o14\ne: 0x1F\nf: ~\ng: True')).toEqual({
      a: '2026-03-01',
      b: 'yes',
      c: 'no',
      // Numbers to the YAML of programmers (10.3.2), and slips in the records of a grower.
      d: '0o14',
      e: '0x1F',
      f: null,
      g: true,
    });
  });

  test('reads whatever a YAML writer writes as that writer means it', () => {
    const json = fc.jsonValue({ maxDepth: 4 });
    fc.assert(
      fc.property(json, value => {
        const text = stringify(value, { aliasDuplicateObjects: false });
        expect(valueIn(text)).toEqual(parse(text));
      }),
      { seed: 3 },
    );
  });
});

test('a key named __proto__ is a key like any other', () => {
  const value = valueIn('__proto__: { lot: x }') as object;
  expect(Object.keys(value)).toEqual(['__proto__']);
  expect('lot' in value).toBe(false);
});

test.each([
  ['a: &x 1', 'yaml-alias'],
  ['a: *x', 'yaml-alias'],
  ['&a [*a]', 'yaml-alias'],
  ['a: !!binary aGk=', 'yaml-syntax'],
  ['? [a]\n: b', 'yaml-syntax'],
  ['a: 1\nb: 2\na: 3', 'duplicate-key'],
  ['{ a: 1, "a": 2 }', 'duplicate-key'],
  ['1: x\n"1": y', 'duplicate-key'],
  ['a:\n\tb: 1', 'yaml-tab'],
  ['%YAML 1.1\n---\na: 1\n---\nb: 1', 'yaml-syntax'],
])('%j is refused: %s', (text, rule) => {
  expect(rulesOf(text)).toEqual([rule]);
});
