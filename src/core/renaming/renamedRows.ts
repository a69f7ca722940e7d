/** Lines that a rename adds to the list of addresses: no address of before is left behind, and none leads on twice. */

import { type Ledger, ledgerOf, resolve } from '../addresses/ledger.ts';
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

/** The list with lines of a rename at its end. */
function ledgerWith({ rows }: Ledger, added: ReadonlyMap<string, string | null>, since: Day): Ledger {
  const lines = [...added].map(([address, leadsTo]) => ({ address, since, leadsTo, line: 0 }));
  return ledgerOf([...rows, ...lines]);
}

/**
 * The lines to add: every page that moves, `always` among them whether it was listed or not, and every redirect that led to one.
 * An address that would lead to itself becomes a page again. Parts follow their page; one that would end elsewhere than where it led before,
 * moved along, gets a line of its own: its page may have led over one on which the part has another name.
 */
export function renamedRows(ledger: Ledger, moved: Moved, always: string, since: Day): NewRow[] {
  const { latest } = ledger;
  const rows = new Map<string, string | null>();
  const add = (address: string, to: string) => rows.set(address, to === address ? null : to);
  add(always, moved(always) ?? always);
  for (const { address, leadsTo } of latest.values()) {
    const to = leadsTo === null ? (address.includes('#') ? null : moved(address)) : moved(leadsTo);
    if (to !== null) add(address, to);
  }
  const after = ledgerWith(ledger, rows, since);
  for (const address of latest.keys()) {
    const [before, now] = [resolve(ledger, address), resolve(after, address)];
    if (!address.includes('#') || !('to' in before)) continue;
    const to = moved(before.to) ?? before.to;
    if (!('to' in now) || now.to !== to) add(address, to);
  }
  return [...rows].map(([address, leadsTo]) => ({ address, since, leadsTo }));
}
