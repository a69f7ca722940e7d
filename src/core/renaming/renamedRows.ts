/** Lines that a rename adds to the list of addresses: no address of before is left behind, and none leads on twice. */

import type { Ledger } from '../addresses/ledger.ts';
import type { NewRow } from '../addresses/listText.ts';
import { type RecordKind, recordAddress } from '../addresses/paths.ts';
import type { Day } from '../days.ts';

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

/**
 * The lines to add: every page that moves, `always` among them whether it was listed or not, and every redirect that led to one.
 * An address that would lead to itself becomes a page again. Parts without a line of their own follow their page.
 */
export function renamedRows({ latest }: Ledger, moved: Moved, always: string, since: Day): NewRow[] {
  const rows = new Map<string, string | null>();
  const add = (address: string, to: string) => rows.set(address, to === address ? null : to);
  add(always, moved(always) ?? always);
  for (const { address, leadsTo } of latest.values()) {
    const to = leadsTo === null ? (address.includes('#') ? null : moved(address)) : moved(leadsTo);
    if (to !== null) add(address, to);
  }
  return [...rows].map(([address, leadsTo]) => ({ address, since, leadsTo }));
}
