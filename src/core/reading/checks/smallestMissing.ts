import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { containersInUse } from './containersInUse.ts';

/** Every pot size in use has a smallest plant that is sold in it. */
export const smallestMissing: Check = draft => {
  const { yard } = draft;
  if (!yard) return [];
  return containersInUse(draft)
    .filter(name => !Object.hasOwn(yard.value.smallest, name))
    .map(name => ({
      rule: 'smallest-missing' as const,
      file: yard.file,
      spot: atValue('smallest'),
      got: Object.keys(yard.value.smallest).join(', '),
      expected: name,
      message: `lots stand in ${name} pots, but no smallest size is set for them`,
      remedy: `add a line with "container: '${name}'" and a least height or stem thickness.`,
    }));
};
