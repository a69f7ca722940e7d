/** The walks turned round: for each lot the lines about it, oldest first. Built once; every lot then reads only its own. */

import type { Day } from '../days.ts';
import type { Walk, WalkRow } from '../records/walk.ts';

export interface Sighting {
  on: Day;
  row: WalkRow;
}

export type WalkIndex = ReadonlyMap<string, readonly Sighting[]>;

/** Lines of the walks on or before `asOf` by lot, in order of day. */
export function indexWalks(walks: readonly Walk[], asOf: Day): WalkIndex {
  const index = new Map<string, Sighting[]>();
  const known = walks.filter(walk => walk.day <= asOf);
  for (const { day: on, rows } of known.sort((a, b) => (a.day < b.day ? -1 : Number(a.day > b.day)))) {
    for (const row of rows) {
      const sightings = index.get(row.lot);
      if (sightings) sightings.push({ on, row });
      else index.set(row.lot, [{ on, row }]);
    }
  }
  return index;
}
