/** What addresses become when a record or a page gets another one. */

import { type RecordKind, recordAddress } from './paths.ts';

/** What an address becomes; null when the rename does not touch it. */
export type Moved = (address: string) => string | null;

/** Addresses of a record and of what lies below it; for a place also the guides made for it. */
export function recordMoved({ kind, from, to }: { kind: RecordKind; from: string; to: string }): Moved {
  const [before, after] = [recordAddress(kind, from), recordAddress(kind, to)];
  return address => {
    if (address.startsWith(before)) return after + address.slice(before.length);
    const [, above, id, rest] = /^(\/guides\/[^/#]+\/)([^/#]+)(\/(?:#.*)?)$/.exec(address) ?? [];
    return kind === 'place' && id === from ? `${above}${to}${rest}` : null;
  };
}

/** One address, with the parts it may have. */
export function addressMoved(from: string, to: string): Moved {
  return address => {
    if (address === from) return to;
    if (from.includes('#') || !address.startsWith(`${from}#`)) return null;
    return to.includes('#') ? to : `${to}${address.slice(from.length)}`;
  };
}
