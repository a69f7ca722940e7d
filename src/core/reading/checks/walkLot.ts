import { atCell } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** A walk counts lots that exist. */
export const walkLot: Check = ({ walks, privateWalks, ids, allLotsKnown }) =>
  (allLotsKnown ? [...walks, ...privateWalks] : []).flatMap(({ file, rows }) =>
    rows.flatMap(({ lot, line }) =>
      checkReference({
        rule: 'walk-lot',
        file,
        spot: atCell(line, 'lot'),
        kind: 'lot',
        id: lot,
        known: ids.lot,
        where: 'Lots are in content/lots/.',
      }),
    ),
  );
