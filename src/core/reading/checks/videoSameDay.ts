import { byText } from '../locate.ts';
import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** Two videos are seldom published on one day: it is either a slip or good to know in which order they are listed. */
export const videoSameDay: Check = ({ videos }) =>
  [...Map.groupBy(videos, ({ value }) => value.date)].flatMap(([date, ofDay]) => {
    const [first, ...others] = ofDay.toSorted((a, b) => byText(a.id, b.id));
    return others.map(({ file }) => ({
      rule: 'video-same-day' as const,
      file,
      spot: atValue('date'),
      got: quote(date),
      expected: 'a day of its own',
      message: `the video has the date of ${first!.file}, and those of one day are listed in the order of their file names`,
      remedy: 'mend one of the dates, or leave it if both came out that day.',
    }));
  });
