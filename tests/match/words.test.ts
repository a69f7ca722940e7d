/** The words for shares of years. Their bounds are our working figures. */
import { expect, it } from 'vitest';
import { ripeningWord, spreadInWords, yearsOfTen } from '../../src/core/match/words.ts';

it.each([
  [1, 'in nearly every year'],
  [0.95, 'in nearly every year'],
  [0.949, 'in 9 years in 10'],
  [0.5, 'in 5 years in 10'],
  [0.15, 'in 2 years in 10'],
  [0.149, 'in 1 year in 10'],
  [0.05, 'in 1 year in 10'],
  [0.049, 'in hardly any year'],
  [0, 'in hardly any year'],
])('a share of %f is %s', (share, words) => {
  expect(yearsOfTen(share)).toBe(words);
});

it.each([
  [0.8, 'reliable'],
  [0.79, 'most-years'],
  [0.5, 'most-years'],
  [0.49, 'some-years'],
  [0.2, 'some-years'],
  [0.19, 'not-outdoors'],
])('a crop that ripens in a share of %f is %s', (share, word) => {
  expect(ripeningWord(share)).toBe(word);
});

it('tells days without their year, and one day once', () => {
  expect(spreadInWords({ p10: 226, p50: 240, p90: 250 })).toBe('August 14 to September 7');
  expect(spreadInWords({ p10: 226, p50: 226, p90: 226 })).toBe('August 14');
});
