import { describe, expect, it } from 'vitest';
import { fruitSizeInWords } from './measures.ts';
import { countInWords, listInWords, sentence, standingInWords, weekdaysInWords } from './words.ts';

describe('words for people', () => {
  it('lists', () => {
    expect(listInWords([])).toBe('');
    expect(listInWords(['fig'])).toBe('fig');
    expect(listInWords(['fig', 'jujube'])).toBe('fig and jujube');
    expect(listInWords(['fig', 'jujube', 'mulberry'], 'or')).toBe('fig, jujube or mulberry');
  });

  it('counts', () => {
    expect(countInWords(0, 'lot')).toBe('no lots');
    expect(countInWords(1, 'lot')).toBe('1 lot');
    expect(countInWords(5000, 'lot')).toBe('5,000 lots');
  });

  it('names weekdays from Monday on (ISO 8601: Monday is 1)', () => {
    expect(weekdaysInWords([2, 1])).toBe('Mondays and Tuesdays');
    expect(weekdaysInWords([7])).toBe('Sundays');
  });

  it('starts a sentence without touching the rest', () => {
    expect(sentence('pot of SP4')).toBe('Pot of SP4');
    expect(sentence('')).toBe('');
  });

  it('says a standing once, even when the source says it as well', () => {
    expect(standingInWords('seen')).toBe('seen in the yard');
    expect(standingInWords('published', 'Weinberger 1950.')).toBe('published: Weinberger 1950');
    expect(standingInWords('practice', 'Common practice, no source.')).toBe('common practice, no source');
  });

  it('gives fruit in both units (25.4 mm to the inch: NIST Handbook 44, Appendix C)', () => {
    expect(fruitSizeInWords(50.8, 25.4)).toBe('2.0 × 1.0 in (51 × 25 mm)');
  });
});
