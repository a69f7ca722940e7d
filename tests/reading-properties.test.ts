/** Whatever the bytes, the reading gives diagnostics and never throws; and the order of files does not matter. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day } from '../src/core/days.ts';
import { type Reading, readClockSettings, readRecords, type SourceFile } from '../src/core/reading/read.ts';
import { ruleIds } from '../src/core/reading/rules.ts';
import { loadYard } from './yards/loadYard.ts';

const { files, photos } = loadYard('base');
const asOf = day('2026-11-25');
const read = (changed: readonly SourceFile[]) => readRecords(changed, { asOf, photos });
const known = new Set<string>(ruleIds);
const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** Looks further where new values are looked for (`tests/seeds.ts`). */
const runs = (numRuns: number) => ({ numRuns: process.env.FC_SEED === 'random' ? numRuns * 5 : numRuns });

function expectSound({ records, diagnostics }: Reading): void {
  const errors = diagnostics.filter(({ level }) => level === 'error');
  expect(records === null).toBe(errors.length > 0);
  for (const { rule, line, column, message, remedy } of diagnostics) {
    expect(known.has(rule)).toBe(true);
    expect(line).toBeGreaterThanOrEqual(0);
    expect(column).toBeGreaterThanOrEqual(line === 0 ? 0 : 1);
    expect(message).toMatch(/^\S.*[^.\s]$/);
    expect(remedy).toMatch(/[.?]$/);
    expect(`${message} ${remedy}`).not.toMatch(/undefined|\[object|NaN|Error:|\n/);
    // Control and direction signs, which a terminal would obey (Unicode Standard Annex 9).
    expect(`${message} ${remedy}`).not.toMatch(/[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u);
    expect(message.length).toBeLessThanOrEqual(400);
    expect(remedy.length).toBeLessThanOrEqual(400);
  }
  const places = diagnostics.map(({ file, line, column }) => [file, line, column] as const);
  expect(places).toEqual(
    [...places].sort((a, b) => (a[0] === b[0] ? a[1] - b[1] || a[2] - b[2] : a[0] < b[0] ? -1 : 1)),
  );
}

function replaced(index: number, bytes: Uint8Array): SourceFile[] {
  return files.map((file, at) => (at === index ? { path: file.path, bytes } : file));
}

const anyFile = fc.nat({ max: files.length - 1 });

describe('never throws', () => {
  test('any bytes as any file', () => {
    fc.assert(
      fc.property(anyFile, fc.uint8Array({ maxLength: 300 }), (index, bytes) => {
        expectSound(read(replaced(index, bytes)));
      }),
      runs(80),
    );
  });

  test('any text of signs that mean something, as any file', () => {
    const signs = fc.string({
      unit: fc.constantFrom(
        ...'-?:,[]{}#&*!|>\'"%@` \n\tab1._~=<+/\\é\u0301\u2028',
        '---\n',
        'lot',
        ': ',
        '- ',
        '\n  ',
      ),
      maxLength: 120,
    });
    fc.assert(
      fc.property(anyFile, signs, fc.boolean(), (index, text, fenced) => {
        const whole = fenced ? `---\n${text}\n---\n${text}` : text;
        expectSound(read(replaced(index, encoder.encode(whole))));
      }),
      runs(150),
    );
  });

  test('a good yard with lines deleted, doubled, swapped, indented or cut', () => {
    const change = fc.record({
      kind: fc.constantFrom('delete', 'double', 'swap', 'indent', 'cut', 'blank'),
      at: fc.nat(),
    });
    fc.assert(
      fc.property(anyFile, fc.array(change, { minLength: 1, maxLength: 4 }), (index, changes) => {
        const lines = decoder.decode(files[index]!.bytes).split('\n');
        for (const { kind, at } of changes) mutateLines(lines, kind, at % Math.max(1, lines.length));
        expectSound(read(replaced(index, encoder.encode(lines.join('\n')))));
      }),
      runs(120),
    );
  });

  test('a good yard with one value replaced by another', () => {
    const values = fc.constantFrom(
      '',
      '-1',
      '1e999',
      '.nan',
      '.inf',
      'null',
      'true',
      '[]',
      '{}',
      '[[]]',
      '""',
      '"x"',
      '2026-02-30',
      '0x1F',
      '99999999999999999999',
      '#1',
      '*a',
      '&a b',
      '!!x y',
      '{ a: 1 }',
      '[1, 2, 3]',
      '__proto__',
      'constructor',
      '"\\u0000"',
      '=1+1',
      '2026-13-45',
      '-0',
    );
    fc.assert(
      fc.property(anyFile, fc.nat(), values, (index, at, value) => {
        const text = decoder.decode(files[index]!.bytes);
        const spots = [...text.matchAll(/(?<=: |,|- )[^\s,\]}]+/g)];
        const spot = spots[at % Math.max(1, spots.length)];
        if (!spot) return;
        const changed = text.slice(0, spot.index) + value + text.slice(spot.index + spot[0].length);
        expectSound(read(replaced(index, encoder.encode(changed))));
      }),
      runs(200),
    );
  });

  test('any file names', () => {
    const name = fc.string({
      unit: fc.constantFrom(...'ab/.-_ \\', 'lots/', 'walks/', '.yaml', '.csv', '.md', 'é'),
      maxLength: 12,
    });
    fc.assert(
      fc.property(name, fc.constantFrom('', 'a: 1', 'lot,left\nx,1'), (path, text) => {
        expectSound(read([...files, { path, bytes: encoder.encode(text) }]));
      }),
      runs(60),
    );
  });

  test('the clock settings of any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), bytes => {
        expect(readClockSettings([{ path: 'yard.yaml', bytes }])).toEqual({ timeZone: null, fixedDay: null });
      }),
      runs(100),
    );
  });
});

function mutateLines(lines: string[], kind: string, at: number): void {
  const line = lines[at] ?? '';
  if (kind === 'delete') lines.splice(at, 1);
  if (kind === 'double') lines.splice(at, 0, line);
  if (kind === 'swap') lines.splice(at, 2, lines[at + 1] ?? '', line);
  if (kind === 'indent') lines[at] = ` ${line}`;
  if (kind === 'cut') lines[at] = line.slice(0, line.length / 2);
  if (kind === 'blank') lines[at] = '';
}

describe('the order of files does not matter', () => {
  test.each(['base', 'references', 'lot-twice-in-two-files', 'cultivars', 'counts-rise'])('%s', name => {
    const yard = loadYard(name);
    const inOrder = readRecords(yard.files, yard);
    fc.assert(
      fc.property(fc.shuffledSubarray(yard.files, { minLength: yard.files.length }), shuffled => {
        expect(readRecords(shuffled, yard)).toEqual(inOrder);
      }),
      runs(10),
    );
  });
});

test('what was read does not change what is read next', () => {
  const first = read(files);
  read(replaced(0, encoder.encode('a: [')));
  expect(read(files)).toEqual(first);
});
