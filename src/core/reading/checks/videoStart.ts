import { chapterTime } from '../../videos/chapters.ts';
import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** The first chapter starts with the video. */
export const videoStart: Check = ({ videos }) =>
  videos.flatMap(({ file, written, value }) => {
    const first = value.chapters[0]!;
    if (first.seconds === 0) return [];
    return [
      {
        rule: 'video-start' as const,
        file,
        spot: atValue('chapters', 0, 'time'),
        got: quote(written.chapters[0]!.time),
        expected: '"0:00"',
        message: `the first chapter starts at ${chapterTime(first)}, not with the video`,
        remedy: 'put a chapter at "0:00" above it, or mend the time.',
      },
    ];
  });
