/** What the lines of the address list say together: for every address ever published, where it leads now. */

import type { AddressRow } from '../records/address.ts';

export interface Ledger {
  /** In the order of the file, oldest first. */
  rows: readonly AddressRow[];
  /** The line that holds for each address: the last one. */
  latest: ReadonlyMap<string, AddressRow>;
}

export function ledgerOf(rows: readonly AddressRow[]): Ledger {
  return { rows, latest: new Map(rows.map(row => [row.address, row])) };
}

/** The page of an address without the name of a part: `/guides/x/` of `/guides/x/#lifting`. */
export function pageOf(address: string): string {
  const sign = address.indexOf('#');
  return sign < 0 ? address : address.slice(0, sign);
}

/** The named part of an address, null when it is a whole page: `lifting` of `/guides/x/#lifting`. */
export function partOf(address: string): string | null {
  const sign = address.indexOf('#');
  return sign < 0 ? null : address.slice(sign + 1);
}

export type Resolution =
  | {
      /** The page, or part of a page, on which a reader ends. */
      to: string;
      /** Redirects on the way; 0 when the address is a page itself. */
      hops: number;
    }
  | {
      /** The addresses that lead round in a circle, in order; the first is led to by the last. */
      loop: string[];
    };

/**
 * Follows an address through the list. A part follows its own line; where it has none, its page does and the part's name stays
 * with it, as browsers keep it over a redirect (RFC 9110, 10.2.2) unless the new address names a part of its own.
 */
export function resolve({ latest }: Ledger, address: string): Resolution {
  const seen = [address];
  let next = nextOf(latest, address);
  while (next !== null) {
    const before = seen.indexOf(next);
    if (before >= 0) return { loop: seen.slice(before) };
    seen.push(next);
    next = nextOf(latest, next);
  }
  return { to: seen.at(-1)!, hops: seen.length - 1 };
}

function nextOf(latest: Ledger['latest'], address: string): string | null {
  const own = latest.get(address)?.leadsTo ?? null;
  const part = partOf(address);
  if (own !== null || part === null) return own;
  const page = latest.get(pageOf(address))?.leadsTo ?? null;
  return page === null || page.includes('#') ? page : `${page}#${part}`;
}
