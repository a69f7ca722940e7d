import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** Two cultivars of a species do not share a name. */
export const nameTwice: Check = ({ cultivars }) => {
  const first = new Map<string, string>();
  return cultivars.flatMap(({ file, value }) => {
    const key = `${value.species} ${value.name.toLowerCase()}`;
    const earlier = first.get(key);
    if (earlier === undefined) {
      first.set(key, file);
      return [];
    }
    return [
      {
        rule: 'name-twice' as const,
        file,
        spot: atValue('name'),
        got: quote(value.name),
        expected: 'a name that no other cultivar of the species has',
        message: `the name ${quote(value.name)} is also used in {see}`,
        see: { file: earlier, path: ['name'] },
        remedy: 'keep one of the files if they are one cultivar; else add to the name what sets them apart.',
      },
    ];
  });
};
