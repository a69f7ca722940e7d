/** Tells a full disk from other problems, whichever of the programs of a build has met it. */

import { statfsSync } from 'node:fs';

/** With less than this free, whatever failed has most likely failed for want of room: 64 kB, less than a page with its folder and its list entry. */
const nearlyNothingBytes = 65_536;

/** How the system, Node and the programs of a build put it: a full disk, and somebody's full share of one (errno(3): ENOSPC, EDQUOT). */
const said = /\b(?:ENOSPC|EDQUOT)\b|no space left|disk quota exceeded/i;

function freeBytes(folder: string): number {
  try {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize;
  } catch {
    return Number.POSITIVE_INFINITY;
  }
}

/** Whether a problem comes from a full disk: it says so, or one of the folders that were written in has no room. */
export function isDiskFull(problem: unknown, folders: readonly string[] = []): boolean {
  const text =
    problem instanceof Error
      ? `${(problem as NodeJS.ErrnoException).code} ${problem.message}`
      : String(problem);
  return said.test(text) || folders.some(folder => freeBytes(folder) < nearlyNothingBytes);
}
