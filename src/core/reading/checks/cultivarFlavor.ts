import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** A flavor class is one that yard.yaml defines. */
export const cultivarFlavor: Check = ({ cultivars, yard }) => {
  if (!yard) return [];
  const known = new Set(yard.value.flavorClasses.map(({ id }) => id));
  return cultivars.flatMap(({ file, value }) =>
    checkReference({
      rule: 'cultivar-flavor',
      file,
      spot: atValue('flavor'),
      kind: 'flavor class',
      id: value.flavor,
      known,
      where: 'Flavor classes are in content/yard.yaml under flavor_classes.',
    }),
  );
};
