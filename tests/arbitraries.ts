/** Random records that several property tests share. */

import fc from 'fast-check';
import type { RoundingLine } from '../src/core/lots/ladder.ts';

/** Roundings as a yard may write them: rising limits, any multiples. */
export const roundings: fc.Arbitrary<RoundingLine[]> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 1, max: 900 }), { maxLength: 4 }),
    fc.array(fc.constantFrom(0.5, 1, 2, 5, 7, 10, 25), { minLength: 5, maxLength: 5 }),
  )
  .map(([limits, steps]) => [
    ...limits.sort((a, b) => a - b).map((below, index) => ({ below, to: steps[index]! })),
    { below: null, to: steps[4]! },
  ]);
