import { describe, expect, test } from 'vitest';
import { secondsOf } from '../records/video.ts';
import { chapterFragment, chapterTime } from './chapters.ts';

describe('the time of a chapter', () => {
  // Minutes without a leading zero, hours only when there are some: common practice, no source.
  test.each([
    [0, '0:00'],
    [5, '0:05'],
    [65, '1:05'],
    [599, '9:59'],
    [600, '10:00'],
    [3599, '59:59'],
    [3600, '1:00:00'],
    [3750, '1:02:30'],
    [36_061, '10:01:01'],
  ])('%i seconds is %s', (seconds, words) => {
    expect(chapterTime({ seconds })).toBe(words);
    expect(secondsOf(words)).toBe(seconds);
  });

  test('its fragment is the start in whole seconds, as in the t of W3C Media Fragments URI 1.0', () => {
    expect(chapterFragment({ seconds: 95 })).toBe('t-95');
    expect(chapterFragment({ seconds: 0 })).toBe('t-0');
  });
});
