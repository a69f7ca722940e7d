/** Lines that a rename adds to the list of addresses: no address of before is left behind, and none leads on twice. */

import { type Ledger, ledgerOf, resolve } from '../addresses/ledger.ts';
import type { NewRow } from '../addresses/listText.ts';
import type { Moved } from '../addresses/moved.ts';
import type { Day } from '../days.ts';

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
