/** A place record in the making: what a file says, what the grower adds, and what is then missing or wrong. */

import { placeFaults } from '../climate/placeFaults.ts';
import { idPattern } from '../records/common.ts';
import { normalisePlace, type WrittenPlace, writtenPlace } from '../records/place.ts';
import { placeId } from './stationName.ts';

export type Draft = Partial<WrittenPlace>;

/** A draft, and what its maker should know about it. */
export interface Drafted {
  draft: Draft;
  notes: string[];
}

export type Finished = { id: string; record: WrittenPlace } | { problems: string[] };

const pairs = [
  ['tmax_c', 'tmax_f'],
  ['tmin_c', 'tmin_f'],
  ['rain_mm', 'rain_in'],
] as const;

/** `added` over `draft`; a figure given in one unit replaces the same figure in the other. */
export function addTo(draft: Draft, added: Draft): Draft {
  const merged: Draft = { ...draft, ...added };
  for (const [metric, other] of pairs) {
    if (added[metric] !== undefined && added[other] === undefined) delete merged[other];
    if (added[other] !== undefined && added[metric] === undefined) delete merged[metric];
  }
  return merged;
}

/** Flag that gives a key: `elevation_m` is `--elevation-m`. */
function flagOf(key: string): string {
  return `--${key.replaceAll('_', '-')}`;
}

/** Checks a draft as the content check would, and gives it its id. Every problem is one sentence with its remedy. */
export function finishDraft(draft: Draft, id: string | null): Finished {
  const read = writtenPlace.safeParse(draft);
  if (!read.success) {
    const problems = read.error.issues.map(({ path, message }) => {
      const key = path.map(String).join('.');
      const missing = path.length === 1 && draft[path[0] as keyof WrittenPlace] === undefined;
      return missing ? `${key} is not known; give ${flagOf(key)}.` : `${key}: ${message}.`;
    });
    return { problems: [...new Set(problems)] };
  }
  const record = read.data;
  const chosen = id ?? placeId(record.name, record.region, record.country);
  if (!idPattern.test(chosen)) {
    return { problems: [`"${chosen}" is no id: use a to z, 0 to 9 and single hyphens (--id).`] };
  }
  const faults = placeFaults(record, normalisePlace(chosen, record));
  if (faults.length > 0) {
    return {
      problems: faults.map(
        ({ message, got, expected, remedy }) => `${message} Got ${got}; expected ${expected}. ${remedy}`,
      ),
    };
  }
  return { id: chosen, record };
}
