import fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance, nearest } from './nearest.ts';

test('counts the slips that Damerau (1964) names: one letter more, less, wrong, or two swapped', () => {
  expect(editDistance('bellwether', 'bellwether')).toBe(0);
  expect(editDistance('bellweather', 'bellwether')).toBe(1);
  expect(editDistance('bellwther', 'bellwether')).toBe(1);
  expect(editDistance('bellwexher', 'bellwether')).toBe(1);
  expect(editDistance('blelwether', 'bellwether')).toBe(1);
  expect(editDistance('', 'abc')).toBe(3);
});

test('gives the textbook distance of two unlike words (Levenshtein: kitten, sitting, 3)', () => {
  expect(editDistance('kitten', 'sitting')).toBe(3);
});

test('is a symmetric distance that is zero only for equal words', () => {
  const word = fc.string({ maxLength: 8 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      const distance = editDistance(a, b);
      expect(distance).toBe(editDistance(b, a));
      for (const most of [0, 1, 2, 3]) {
        expect(editDistance(a, b, most)).toBe(distance <= most ? distance : Number.POSITIVE_INFINITY);
      }
      expect(distance === 0).toBe(a === b);
      expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
    }),
    { seed: 7 },
  );
});

test('finds the word meant', () => {
  expect(nearest('cultvar', ['lot', 'cultivar', 'method'])).toBe('cultivar');
  expect(nearest('Air Layer', ['air-layer', 'cutting'])).toBe('air-layer');
  expect(nearest('leafed_pot', ['leafed-pot', 'dormant-pot'])).toBe('leafed-pot');
});

test('says nothing rather than something far-fetched', () => {
  expect(nearest('tree', ['lot', 'cultivar', 'method'])).toBeNull();
  expect(nearest('', ['a', 'b'])).toBeNull();
  expect(nearest('x'.repeat(500), ['xx'])).toBeNull();
});

test('does not depend on the order of the known words', () => {
  expect(nearest('lat', ['cat', 'bat'])).toBe('bat');
  expect(nearest('lat', ['bat', 'cat'])).toBe('bat');
});
