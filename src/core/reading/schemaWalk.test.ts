import { expect, test } from 'vitest';
import { z } from 'zod';
import { wantedAt } from './schemaWalk.ts';

const schema = z.strictObject({
  word: z.enum(['a', 'b']).describe('A word.').optional(),
  list: z.array(z.strictObject({ many: z.int().min(0).max(9).describe('How many.') })),
  map: z.record(z.string(), z.number().positive()),
  pair: z.tuple([z.string().max(5), z.number()]),
});

test('finds what should stand at a path', () => {
  expect(wantedAt(schema, ['word'])).toMatchObject({
    type: 'word',
    description: 'A word.',
    words: ['a', 'b'],
  });
  expect(wantedAt(schema, ['list', 3, 'many'])).toMatchObject({ type: 'whole', low: 0, high: 9 });
  expect(wantedAt(schema, ['list', 3])).toMatchObject({ type: 'group', keys: ['many'] });
  expect(wantedAt(schema, ['map', 'anything'])).toMatchObject({ type: 'number', low: 0, high: null });
  expect(wantedAt(schema, ['pair', 0])).toMatchObject({ type: 'text', longest: 5 });
});

test('knows when a path leads nowhere', () => {
  expect(wantedAt(schema, ['none'])).toBeNull();
  expect(wantedAt(schema, ['toString'])).toBeNull();
  expect(wantedAt(schema, ['word', 'deeper'])).toBeNull();
});
