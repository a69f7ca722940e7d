import type { LotEntry } from '../draft.ts';
import { atValue, type KeyPath, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

interface Step {
  path: KeyPath;
  name: string;
  day: string | undefined;
}

/** The days of a lot follow one another: each step is compared with those that must come before it. */
export const lotDates: Check = ({ lots }) => lots.flatMap(lotProblems);

function lotProblems({ file, index, written }: LotEntry): Problem[] {
  const started: Step = { path: ['started'], name: 'the start', day: written.started };
  const severed: Step = { path: ['severed'], name: 'the severing', day: written.severed };
  const lifted: Step = { path: ['lifted'], name: 'the lifting', day: written.lifted };
  const hold: Step = { path: ['hold', 'since'], name: 'the hold', day: written.hold?.since };
  const pottings = (written.pottings ?? []).map(({ date }, at): Step => {
    return {
      path: ['pottings', at, 'date'],
      name: at === 0 ? 'the first potting' : `potting ${at + 1}`,
      day: date,
    };
  });
  const asides = (written.reserved ?? []).flatMap(({ since, until }, at): [Step, Step][] => {
    const from: Step = { path: ['reserved', at, 'since'], name: 'setting plants aside', day: since };
    return [
      [started, from],
      [from, { path: ['reserved', at, 'until'], name: 'the last day plants are kept', day: until }],
    ];
  });
  const pairs: [Step, Step][] = [
    [started, severed],
    [started, lifted],
    [started, hold],
    ...asides,
    ...pottings.map((potting, at): [Step, Step] => [pottings[at - 1] ?? latest(started, severed), potting]),
  ];
  return pairs.flatMap(([earlier, later]) => {
    if (earlier.day === undefined || later.day === undefined || earlier.day <= later.day) return [];
    return [
      {
        rule: 'lot-dates' as const,
        file,
        spot: atValue(index, ...later.path),
        got: later.day,
        expected: `${earlier.day} or later`,
        message: `${later.name} on ${later.day} comes before ${earlier.name} on ${earlier.day}`,
        remedy: 'mend the day that is wrong; look at the years first.',
      },
    ];
  });
}

function latest(a: Step, b: Step): Step {
  return b.day !== undefined && (a.day === undefined || b.day > a.day) ? b : a;
}
