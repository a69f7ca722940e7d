import { dayInWords } from '../../days.ts';
import { wholeFile } from '../problem.ts';
import type { Check } from './check.ts';

/** Says which walks are left out because they are dated after the day the site is made for. */
export const walkLater: Check = ({ walks, privateWalks, asOf }) =>
  [...walks, ...privateWalks]
    .filter(({ day }) => day > asOf)
    .map(({ file, day }) => ({
      rule: 'walk-later' as const,
      file,
      spot: wholeFile,
      got: day,
      expected: `${asOf} or earlier`,
      message: `the walk of ${dayInWords(day)} is after ${dayInWords(asOf)} and left out`,
      remedy: 'rename the file if its day is wrong; else it counts once that day has come.',
    }));
