import { type Day, dayInWords } from '../../days.ts';
import type { Draft, LotEntry } from '../draft.ts';
import { atValue, type KeyPath, type Problem, wholeFile } from '../problem.ts';
import type { Check } from './check.ts';

/** Says what is left out because it is dated after the day the site is made for. */
export const laterThanDay: Check = draft => [
  ...draft.lots.flatMap(lot => lotProblems(lot, draft.asOf)),
  ...videoProblems(draft),
  ...temperatureProblems(draft),
];

function later(file: string, path: KeyPath, what: string, day: string, asOf: Day): Problem {
  return {
    rule: 'later-than-day',
    file,
    spot: path.length === 0 ? wholeFile : atValue(...path),
    got: day,
    expected: `${asOf} or earlier`,
    message: `${what} on ${day} is after ${dayInWords(asOf)} and left out`,
    remedy: 'mend the day if it is wrong; else it shows once that day has come.',
  };
}

function lotProblems({ file, index, value }: LotEntry, asOf: Day): Problem[] {
  if (value.started > asOf) return [later(file, [index, 'started'], 'the lot started', value.started, asOf)];
  const steps: [KeyPath, string, Day | null][] = [
    [['severed'], 'the severing', value.severed],
    [['lifted'], 'the lifting', value.lifted],
    [['hold', 'since'], 'the hold', value.hold?.since ?? null],
    ...value.pottings.map(({ date }, at): [KeyPath, string, Day] => [
      ['pottings', at, 'date'],
      'the potting',
      date,
    ]),
  ];
  return steps.flatMap(([path, what, day]) =>
    day !== null && day > asOf ? [later(file, [index, ...path], what, day, asOf)] : [],
  );
}

function videoProblems({ videos, asOf }: Draft): Problem[] {
  return videos
    .filter(({ value }) => value.date > asOf)
    .map(({ file, value }) => later(file, ['date'], 'the video', value.date, asOf));
}

/** One line for all later days: a log that runs on is no news. */
function temperatureProblems({ temperatures, asOf }: Draft): Problem[] {
  const first = temperatures.find(({ day }) => day > asOf);
  if (!first) return [];
  return [
    {
      ...later('temperatures.csv', [], 'the log', first.day, asOf),
      message: `days of the log after ${dayInWords(asOf)} are left out`,
    },
  ];
}
