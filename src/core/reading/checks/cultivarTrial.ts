import { atValue } from '../problem.ts';
import type { Check } from './check.ts';

/** A trial ends in the year it begins or later. */
export const cultivarTrial: Check = ({ cultivars }) =>
  cultivars.flatMap(({ file, value }) =>
    value.trials.flatMap(({ from, to }, index) =>
      from <= to
        ? []
        : [
            {
              rule: 'cultivar-trial' as const,
              file,
              spot: atValue('trials', index, 'to'),
              got: String(to),
              expected: `${from} or later`,
              message: `the trial ends in ${to}, before it begins in ${from}`,
              remedy: 'mend one of the years; they may be swapped.',
            },
          ],
    ),
  );
