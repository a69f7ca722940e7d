import type { Draft } from '../draft.ts';
import { atCell, type Problem } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** Files of the private tables, below the content folder. */
export const orderFiles = {
  sales: 'private/sales.csv',
  reservations: 'private/reservations.csv',
  waiting: 'private/waiting.csv',
} as const;

function lotsOf({ orders, ids, allLotsKnown }: Draft): Problem[] {
  if (!allLotsKnown) return [];
  return (['sales', 'reservations'] as const).flatMap(table =>
    orders[table].flatMap(({ lot, line }) =>
      checkReference({
        rule: 'private-unknown',
        file: orderFiles[table],
        spot: atCell(line, 'lot'),
        kind: 'lot',
        id: lot,
        known: ids.lot,
        where: 'Lots are in content/lots/.',
      }),
    ),
  );
}

/** Sales, plants set aside and people who wait speak of lots and cultivars that are there. */
export const orders: Check = draft => [
  ...lotsOf(draft),
  ...draft.orders.waiting.flatMap(({ cultivar, line }) =>
    checkReference({
      rule: 'private-unknown',
      file: orderFiles.waiting,
      spot: atCell(line, 'cultivar'),
      kind: 'cultivar',
      id: cultivar,
      known: draft.ids.cultivar,
      where: 'Cultivars are in content/cultivars/.',
    }),
  ),
];
