/** Under which id a record was first published: what others keep of it, such as the events of a calendar, is told apart by that. */

import type { Ledger } from './ledger.ts';
import { recordOf } from './paths.ts';

/** Place in the list of the first line that publishes each address as a page. */
function firstListings({ rows }: Ledger): Map<string, number> {
  const listed = new Map<string, number>();
  for (const [at, { address, leadsTo }] of rows.entries()) {
    if (leadsTo === null && !listed.has(address)) listed.set(address, at);
  }
  return listed;
}

/**
 * The first address of each record that was renamed, by its address of today. A rename leads the old address on before the new one is
 * published, so an address that was led to a page later than that belonged to another record.
 */
export function firstAddresses(ledger: Ledger): Map<string, string> {
  const listed = firstListings(ledger);
  const first = new Map<string, string>();
  for (const [at, { address, leadsTo }] of ledger.rows.entries()) {
    if (leadsTo === null || address === leadsTo) continue;
    const kind = recordOf(address)?.kind;
    const own = listed.get(address);
    if (kind === undefined || kind !== recordOf(leadsTo)?.kind || own === undefined || own > at) continue;
    if (at > (listed.get(leadsTo) ?? Number.POSITIVE_INFINITY)) continue;
    const known = first.get(leadsTo);
    if (known === undefined || own < listed.get(known)!) first.set(leadsTo, address);
  }
  // Renamed more than once: the names of before have earlier ones of their own.
  for (const [address, before] of first) {
    let earliest = before;
    for (let next = first.get(earliest); next !== undefined; next = first.get(earliest)) earliest = next;
    first.set(address, earliest);
  }
  return first;
}
