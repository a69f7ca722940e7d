/** The walk under way, kept on the device. */

import { type Day, parseDay } from '../../core/days.ts';
import type { Entry } from '../../core/walking/entry.ts';
import { href } from '../../href.ts';

export interface KeptWalk {
  day: Day;
  /** By lot. */
  entries: Record<string, Entry>;
}

/** Sites below different base paths share one storage. */
const key = `leafdrop-walk:${href('/')}`;

/** The walk that was kept; null for none, and for what cannot be read. */
export function keptWalk(): KeptWalk | null {
  try {
    const { day, entries } = JSON.parse(localStorage.getItem(key) ?? 'null') as Record<string, unknown>;
    const known = parseDay(String(day));
    return known !== null && typeof entries === 'object' && entries !== null
      ? { day: known, entries: entries as KeptWalk['entries'] }
      : null;
  } catch {
    return null;
  }
}

/** Whether the browser kept it. */
export function keepWalk(walk: KeptWalk): boolean {
  try {
    localStorage.setItem(key, JSON.stringify(walk));
    return true;
  } catch {
    return false;
  }
}
