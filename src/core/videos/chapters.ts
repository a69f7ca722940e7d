/** Chapters of a video: their times in words, their fragments, and what players ask of them. */

import type { Chapter } from '../records/video.ts';

/** Players that list chapters found in a description ask for this many. Common practice, no source. */
export const FEWEST_CHAPTERS = 3;
/** And for chapters of this length in seconds. Common practice, no source. */
export const SHORTEST_CHAPTER_SECONDS = 10;

const twoDigits = (count: number) => String(count).padStart(2, '0');

/** A time as it stands in front of a chapter: `0:00`, `12:05`, `1:02:30`. */
export function chapterTime({ seconds }: Pick<Chapter, 'seconds'>): string {
  const [hours, minutes, rest] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return hours === 0 ? `${minutes}:${twoDigits(rest)}` : `${hours}:${twoDigits(minutes)}:${twoDigits(rest)}`;
}

/**
 * The fragment of a chapter on the page of its video: `t-95`. Its start in whole seconds, the dimension `t` of W3C Media Fragments URI 1.0
 * (2012), section 4.2.1, since the time of a chapter hardly changes once a video is out, while titles are reworded and chapters added.
 */
export function chapterFragment({ seconds }: Pick<Chapter, 'seconds'>): string {
  return `t-${seconds}`;
}
