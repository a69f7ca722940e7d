/** What is known of a lot by looking: the newest observation of each kind, and since when it has been so. */

import type { DayRange } from '../days.ts';
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

/**
 * First and last day of the newest unbroken run of sightings whose field satisfies a test, and whether it holds at the newest
 * sighting; blanks do not break a run.
 */
function newestRun<K extends keyof WalkRow>(
  sightings: readonly Sighting[],
  field: K,
  satisfies: (value: NonNullable<WalkRow[K]>) => boolean,
): { run: DayRange; holds: boolean } | null {
  let run = null as DayRange | null;
  let holds = true;
  for (let i = sightings.length - 1; i >= 0; i -= 1) {
    const { on, row } = sightings[i]!;
    const value = row[field];
    if (value === null) continue;
    if (satisfies(value as NonNullable<WalkRow[K]>)) run = { from: on, to: run?.to ?? on };
    else if (run) break;
    else holds = false;
  }
  return run && { run, holds };
}

/** Newest observation of each kind from a lot's sightings, oldest first: newer beats older, field by field. */
export function signsOf(sightings: readonly Sighting[]): LotSigns {
  const outside = newestRun(sightings, 'where', where => where === 'outdoors' || where === 'shade');
  const leavesDown = newestRun(sightings, 'leaves', leaves => leaves === 'falling' || leaves === 'bare');
  return {
    heightCm: newest(sightings, 'heightCm'),
    caliperMm: newest(sightings, 'caliperMm'),
    roots: newest(sightings, 'roots'),
    leaves: newest(sightings, 'leaves'),
    wood: newest(sightings, 'wood'),
    health: newest(sightings, 'health'),
    where: newest(sightings, 'where'),
    outsideSince: outside?.holds ? outside.run.from : null,
    lastOutside: outside?.run ?? null,
    leavesDownSince: leavesDown?.holds ? leavesDown.run.from : null,
    lastLooked: sightings.at(-1)?.on ?? null,
  };
}
