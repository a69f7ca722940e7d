import { chapterTime, FEWEST_CHAPTERS, SHORTEST_CHAPTER_SECONDS } from '../../videos/chapters.ts';
import { atKey, atValue, type Problem, plural, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** Chapters are of a number and length that players take out of a description. Their order is another rule's business. */
export const videoPlayers: Check = ({ videos }) =>
  videos.flatMap(({ file, written, value: { chapters } }): Problem[] => {
    if (chapters.length < FEWEST_CHAPTERS) {
      return [
        {
          rule: 'video-players',
          file,
          spot: atKey('chapters'),
          got: String(chapters.length),
          expected: `${FEWEST_CHAPTERS} or more`,
          message: `the video has ${plural(chapters.length, 'chapter')}, and most players list chapters from ${FEWEST_CHAPTERS} up`,
          remedy: 'add chapters, or leave it if your player does not care.',
        },
      ];
    }
    return chapters.flatMap((chapter, index) => {
      const next = chapters[index + 1];
      const seconds = next ? next.seconds - chapter.seconds : SHORTEST_CHAPTER_SECONDS;
      if (seconds <= 0 || seconds >= SHORTEST_CHAPTER_SECONDS) return [];
      return [
        {
          rule: 'video-players' as const,
          file,
          spot: atValue('chapters', index + 1, 'time'),
          got: quote(written.chapters[index + 1]!.time),
          expected: `${SHORTEST_CHAPTER_SECONDS} seconds after ${chapterTime(chapter)}, or later`,
          message: `the chapter at ${chapterTime(chapter)} lasts ${plural(seconds, 'second')}, and most players list none that is shorter than ${SHORTEST_CHAPTER_SECONDS}`,
          remedy: 'put the two together, or leave it if your player does not care.',
        },
      ];
    });
  });
