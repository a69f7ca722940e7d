import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** A lot is of a cultivar that has a file. */
export const lotCultivar: Check = ({ lots, ids }) =>
  lots.flatMap(({ file, index, value }) =>
    checkReference({
      rule: 'lot-cultivar',
      file,
      spot: atValue(index, 'cultivar'),
      kind: 'cultivar',
      id: value.cultivar,
      known: ids.cultivar,
      where: 'Cultivars are in content/cultivars/.',
    }),
  );
