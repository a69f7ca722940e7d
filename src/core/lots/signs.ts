/** What is known of a lot by looking: the newest observation of each kind, and since when it has been so. */

import type { Day } from '../days.ts';
import type { WalkRow } from '../records/walk.ts';
import type { LotSigns, Seen } from './answers.ts';
import type { Sighting } from './walkIndex.ts';

function newest<K extends keyof WalkRow>(
  sightings: readonly Sighting[],
  field: K,
): Seen<NonNullable<WalkRow[K]>> | null {
  for (let i = sightings.length - 1; i >= 0; i -= 1) {
    const { on, row } = sightings[i]!;
    const value = row[field];
    if (value !== null) return { value: value as NonNullable<WalkRow[K]>, on };
  }
  return null;
}

/** First day of the run of sightings, up to the newest, whose field satisfies a test; blanks do not break the run. */
function runStart<K extends keyof WalkRow>(
  sightings: readonly Sighting[],
  field: K,
  holds: (value: NonNullable<WalkRow[K]>) => boolean,
): Day | null {
  let start: Day | null = null;
  for (let i = sightings.length - 1; i >= 0; i -= 1) {
    const { on, row } = sightings[i]!;
    const value = row[field];
    if (value === null) continue;
    if (!holds(value as NonNullable<WalkRow[K]>)) return start;
    start = on;
  }
  return start;
}

/** Newest observation of each kind from a lot's sightings, oldest first: newer beats older, field by field. */
export function signsOf(sightings: readonly Sighting[]): LotSigns {
  return {
    heightCm: newest(sightings, 'heightCm'),
    caliperMm: newest(sightings, 'caliperMm'),
    roots: newest(sightings, 'roots'),
    leaves: newest(sightings, 'leaves'),
    wood: newest(sightings, 'wood'),
    health: newest(sightings, 'health'),
    where: newest(sightings, 'where'),
    outsideSince: runStart(sightings, 'where', where => where === 'outdoors' || where === 'shade'),
    leavesDownSince: runStart(sightings, 'leaves', leaves => leaves === 'falling' || leaves === 'bare'),
    lastLooked: sightings.at(-1)?.on ?? null,
  };
}
