import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** A carton is at least as large outside as inside, side by side from the longest. */
export const cartonSize: Check = ({ yard }) =>
  (yard?.value.cartons ?? []).flatMap(({ name, innerIn, outerIn }, index) => {
    const inside = innerIn.every((inner, side) => inner <= outerIn[side]!);
    if (inside) return [];
    return [
      {
        rule: 'carton-size' as const,
        file: yard!.file,
        spot: atValue('cartons', index, 'outer_in'),
        got: outerIn.join(' x '),
        expected: `at least ${innerIn.join(' x ')}`,
        message: `the carton ${quote(name)} is smaller outside (${outerIn.join(' x ')}) than inside (${innerIn.join(' x ')})`,
        remedy: 'measure again; the two lines may be swapped.',
      },
    ];
  });
