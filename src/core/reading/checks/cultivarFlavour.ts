import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** A flavour class is one that yard.yaml defines. */
export const cultivarFlavour: Check = ({ cultivars, yard }) => {
  if (!yard) return [];
  const known = new Set(yard.value.flavourClasses.map(({ id }) => id));
  return cultivars.flatMap(({ file, value }) =>
    checkReference({
      rule: 'cultivar-flavour',
      file,
      spot: atValue('flavour'),
      kind: 'flavour class',
      id: value.flavour,
      known,
      where: 'Flavour classes are in content/yard.yaml under flavour_classes.',
    }),
  );
};
