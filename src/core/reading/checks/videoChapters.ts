import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** Chapters follow one another in time. */
export const videoChapters: Check = ({ videos }) =>
  videos.flatMap(({ file, written, value }) =>
    value.chapters.flatMap(({ seconds }, index) => {
      const before = value.chapters[index - 1];
      if (!before || before.seconds < seconds) return [];
      const [time, earlier] = [written.chapters[index]!.time, written.chapters[index - 1]!.time];
      return [
        {
          rule: 'video-chapters' as const,
          file,
          spot: atValue('chapters', index, 'time'),
          got: quote(time),
          expected: `later than ${earlier}`,
          message: `the chapter at ${time} does not come after the one at ${earlier}`,
          remedy: 'mend one of the times, or put the chapters in order.',
        },
      ];
    }),
  );
