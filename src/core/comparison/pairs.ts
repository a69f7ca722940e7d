/** Lots that are on both sides of a comparison. */

import type { Catalogue, LotEntry } from '../catalogue.ts';

export interface Pair {
  then: LotEntry;
  now: LotEntry;
}

/** In the order of the later catalogue. */
export function pairsOf(before: Catalogue, after: Catalogue): Pair[] {
  const earlier = new Map(before.lots.map(entry => [entry.lot.id, entry]));
  return after.lots.flatMap(now => {
    const then = earlier.get(now.lot.id);
    return then ? [{ then, now }] : [];
  });
}
