/** Pages of kinds of climate that were published and would be left out now: no place has such a climate any more. */

import { type Ledger, partOf } from './ledger.ts';

/** The address of the page of a kind of climate, by its name. */
const climateAddress = /^\/climates\/([a-z-]+)\/$/;

/** Names of the kinds in the list of addresses that none of the places has, in order; those that lead elsewhere are left out. */
export function formerClimates({ latest }: Ledger, occurring: ReadonlySet<string>): string[] {
  return [...latest.values()]
    .filter(({ address, leadsTo }) => leadsTo === null && partOf(address) === null)
    .flatMap(({ address }) => climateAddress.exec(address)?.[1] ?? [])
    .filter(id => !occurring.has(id))
    .sort();
}
