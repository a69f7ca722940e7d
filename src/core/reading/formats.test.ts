import { expect, test } from 'vitest';
import { formatOf } from './formats.ts';
import { recordSchemas } from './schemas.ts';

/** Every pattern in a JSON Schema, at any depth. */
function patternsIn(value: unknown): string[] {
  if (value === null || typeof value !== 'object') return [];
  const { pattern, format } = value as { pattern?: unknown; format?: unknown };
  const own = typeof pattern === 'string' && format === undefined ? [pattern] : [];
  return [...own, ...Object.values(value).flatMap(patternsIn)];
}

test('every shape of text that a record asks for has words for a grower', () => {
  const patterns = new Set([...recordSchemas().values()].flatMap(text => patternsIn(JSON.parse(text))));
  const unforeseen = formatOf('regex', undefined);
  const isUnforeseen = (source: string) =>
    ['', 'u', 'i', 'v'].every(flags => formatOf('regex', `/${source}/${flags}`) === unforeseen);
  expect(patterns.size).toBeGreaterThan(8);
  expect([...patterns].filter(isUnforeseen)).toEqual([]);
});

test('an unforeseen shape still gets a remedy', () => {
  expect(formatOf('uuid', undefined).remedy('x')).toMatchInlineSnapshot(
    `"write it as the manual of the record shows."`,
  );
});
