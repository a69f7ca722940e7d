import { stockOf } from '../../lots/stock.ts';
import { indexWalks } from '../../lots/walkIndex.ts';
import type { Draft, LotEntry } from '../draft.ts';
import { atValue, type Problem, plural } from '../problem.ts';
import type { Check } from './check.ts';
import { orderFiles } from './orders.ts';

const sum = (rows: readonly { plants: number }[]) => rows.reduce((total, { plants }) => total + plants, 0);

/** More are set aside than are left. */
function tooMany({ asOf, walks }: Draft, reserving: readonly LotEntry[]): Problem[] {
  if (reserving.length === 0) return [];
  const sightings = indexWalks(walks, asOf);
  return reserving.flatMap(({ id, file, index, value }) => {
    const { left } = stockOf(value, sightings.get(id) ?? [], asOf);
    const held = sum(
      value.reserved.filter(({ since, until }) => since <= asOf && (until === null || asOf <= until)),
    );
    if (held <= left) return [];
    return [
      {
        rule: 'reserved-left' as const,
        file,
        spot: atValue(index, 'reserved'),
        got: String(held),
        expected: `at most ${left}`,
        message: `${plural(held, 'plant')} of ${id} are set aside, but ${left} are left`,
        remedy: 'let some go with npm run reserve -- --off, or count again.',
      },
    ];
  });
}

/** What stands with the lots is what the private table says, where that is at hand. */
function differing({ asOf, orders, lots }: Draft): Problem[] {
  if (orders.reservations.length === 0) return [];
  const current = <T extends { until: string | null }>(rows: readonly T[]) =>
    rows.filter(({ until }) => until === null || asOf <= until);
  return lots.flatMap(({ id, file, index, value }) => {
    const [shown, kept] = [
      sum(current(value.reserved)),
      sum(current(orders.reservations.filter(each => each.lot === id))),
    ];
    if (shown === kept) return [];
    return [
      {
        rule: 'reserved-differs' as const,
        file,
        spot: atValue(index),
        got: String(shown),
        expected: String(kept),
        message: `${id} says that ${plural(shown, 'plant')} are set aside, and ${orderFiles.reservations} says ${kept}`,
        remedy: 'npm run reserve writes both; mend the one that is wrong.',
      },
    ];
  });
}

/** Plants set aside are there, and the lots and the private table agree about them. */
export const reserved: Check = draft => [
  ...tooMany(
    draft,
    draft.lots.filter(({ value }) => value.reserved.length > 0),
  ),
  ...differing(draft),
];
