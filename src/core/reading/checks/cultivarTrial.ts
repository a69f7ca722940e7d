import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

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

/** A trial that names a climate names a place that has a file, and a crop that the cultivar bears. */
export const cultivarTrialPlace: Check = ({ cultivars, ids }) =>
  cultivars.flatMap(({ file, value }) =>
    value.trials.flatMap(({ place, crop }, index) => [
      ...(place === null
        ? []
        : checkReference({
            rule: 'cultivar-trial-place',
            file,
            spot: atValue('trials', index, 'place'),
            kind: 'place',
            id: place,
            known: ids.place,
            where:
              'Places are in content/places/; name the one whose climate is most like that of the trial.',
          })),
      ...(value.crops.includes(crop)
        ? []
        : [
            {
              rule: 'cultivar-trial-crop' as const,
              file,
              spot: atValue('trials', index),
              got: crop,
              expected: value.crops.join(' or '),
              message: `the trial speaks of the ${crop} crop, which this cultivar does not bear`,
              remedy: `write crop: ${value.crops[0]} in the trial, or add ${crop} to crops.`,
            },
          ]),
    ]),
  );
