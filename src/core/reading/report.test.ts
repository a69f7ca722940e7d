import { expect, test } from 'vitest';
import type { Diagnostic } from './diagnostic.ts';
import { formatDiagnostic, jsonReport, textReport } from './report.ts';

const unknown: Diagnostic = {
  level: 'error',
  rule: 'lot-cultivar',
  file: 'lots/2026-layers.yaml',
  line: 14,
  column: 9,
  path: '3.cultivar',
  got: '"bellweather"',
  expected: 'a known cultivar',
  message: 'no cultivar "bellweather"',
  remedy: 'did you mean "bellwether"? Cultivars are in content/cultivars/.',
};
const later: Diagnostic = {
  ...unknown,
  level: 'info',
  rule: 'walk-later',
  file: 'walks/2027-01-01.csv',
  line: 0,
  column: 0,
};

test('one line says where, which rule, what is wrong and what to do', () => {
  expect(formatDiagnostic(unknown, 'content')).toBe(
    'content/lots/2026-layers.yaml:14:9 lot-cultivar: no cultivar "bellweather"; did you mean "bellwether"? Cultivars are in content/cultivars/.',
  );
  expect(formatDiagnostic(unknown, '/srv/yard/')).toMatch(/^\/srv\/yard\/lots\/2026-layers\.yaml:14:9 /);
});

test('the report ends with its counts', () => {
  expect(textReport([], 'content')).toBe('0 errors, 0 warnings');
  expect(
    textReport([unknown, { ...unknown, level: 'warning' }, later], 'content')
      .split('\n')
      .at(-1),
  ).toBe('1 error, 1 warning');
});

test('the report for programs has every field and nothing else', () => {
  expect(JSON.parse(jsonReport([unknown], 'content'))).toEqual([
    { ...unknown, file: 'content/lots/2026-layers.yaml' },
  ]);
});

test('a line shows no sign that a terminal would obey, and has 400 signs at most', () => {
  const long = {
    ...unknown,
    file: 'lots/a\nb\u202e.yaml',
    message: `unknown key "${'k'.repeat(500)}"`,
    remedy: `known keys here are ${'key, '.repeat(200)}.`,
  };
  const line = formatDiagnostic(long, 'content');
  expect(line).toMatch(/^content\/lots\/a\\nb\\u202e\.yaml:14:9 lot-cultivar: unknown key/);
  expect(line.length).toBe(400);
  expect(line).toMatch(/\.\.\. See npm run check -- --rules lot-cultivar\.$/);
});
