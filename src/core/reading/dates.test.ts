import { describe, expect, test } from 'vitest';
import { dayWords } from './dates.ts';

const remedyFor = (text: string) => dayWords('"started"', text).remedy;

describe('a text that is no day', () => {
  test('says how long the month is (leap years as in ISO 8601: 1900 is none, 2000 is one)', () => {
    expect(remedyFor('2026-02-30')).toBe('February 2026 has 28 days.');
    expect(remedyFor('2000-02-30')).toBe('February 2000 has 29 days.');
    expect(remedyFor('1900-02-29')).toBe('February 1900 has 28 days.');
    expect(remedyFor('2026-04-31')).toBe('April 2026 has 30 days.');
  });

  test('guesses the day when there is one way to read it', () => {
    expect(remedyFor('2026-3-1')).toMatch(/^did you mean "2026-03-01"\?/);
    expect(remedyFor('2026/03/01')).toMatch(/^did you mean "2026-03-01"\?/);
    expect(remedyFor('20.6.2026')).toMatch(/^did you mean "2026-06-20"\?/);
    expect(remedyFor('6/20/2026')).toMatch(/^did you mean "2026-06-20"\?/);
    expect(remedyFor('2026-03-01T10:00:00Z')).toMatch(/^did you mean "2026-03-01"\?/);
  });

  test('does not guess between day and month', () => {
    expect(remedyFor('3/4/2026')).toBe('write year, month, day, such as 2026-03-01.');
    expect(remedyFor('31.31.2026')).toBe('write year, month, day, such as 2026-03-01.');
  });
});
