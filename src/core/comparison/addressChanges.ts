/** Addresses of records that a change adds, leads elsewhere, or breaks. */

import { ledgerOf, pageOf, resolve } from '../addresses/ledger.ts';
import { recordAddress, shortAddress } from '../addresses/paths.ts';
import { standIn } from '../addresses/standIns.ts';
import type { Catalogue } from '../catalogue.ts';
import type { Side } from './comparison.ts';

export interface AddressChanges {
  gained: string[];
  /** Were pages, or led elsewhere, and now lead to a page. */
  redirected: { from: string; to: string }[];
  /** Were there and lead nowhere any more. */
  lost: string[];
}

/** The pages made of records: what people link to and speak of. Lists and their further pages follow from them. */
function pagesOf({ cultivars, lots, guides, videos, places }: Catalogue): Set<string> {
  const pages = [
    ...cultivars.map(({ cultivar }) => recordAddress('cultivar', cultivar.id)),
    ...lots.map(({ lot }) => recordAddress('lot', lot.id)),
    ...guides.map(({ id }) => recordAddress('guide', id)),
    ...videos.map(({ id }) => recordAddress('video', id)),
    ...places.map(({ id }) => recordAddress('place', id)),
  ];
  const atPlaces = guides.flatMap(guide =>
    places.map(place => `${recordAddress('guide', guide.id)}${place.id}/`),
  );
  return new Set([...pages, ...atPlaces]);
}

/** Where each address of a side ends: a page of itself, the page it leads to, or null when nowhere. */
function endsOf({ catalogue, addresses }: Side): (address: string) => string | null {
  const pages = pagesOf(catalogue);
  const ledger = ledgerOf(addresses);
  const short = new Map([...catalogue.codes].map(([page, code]) => [shortAddress(code), page]));
  return address => {
    if (pages.has(address)) return address;
    const given = short.get(address);
    if (given !== undefined) return given;
    const end = resolve(ledger, address);
    if (!('to' in end)) return null;
    return pages.has(pageOf(end.to)) ? end.to : standIn(ledger, pageOf(end.to), page => pages.has(page));
  };
}

/** Every address of a side that may be asked for: its pages, its short addresses, and old ones that still lead to a page. */
function addressesOf(side: Side): string[] {
  const { catalogue, addresses } = side;
  const short = [...catalogue.codes.values()].map(shortAddress);
  const ends = endsOf(side);
  const old = addresses.map(({ address }) => pageOf(address)).filter(address => ends(address) !== null);
  return [...new Set([...pagesOf(catalogue), ...short, ...old])].sort();
}

export function addressChanges(before: Side, after: Side): AddressChanges {
  const [endBefore, endAfter] = [endsOf(before), endsOf(after)];
  const changes: AddressChanges = { gained: [], redirected: [], lost: [] };
  for (const address of addressesOf(before)) {
    const to = endAfter(address);
    if (to === null) changes.lost.push(address);
    else if (to !== address && to !== endBefore(address)) changes.redirected.push({ from: address, to });
  }
  for (const address of addressesOf(after)) {
    if (endBefore(address) === null) changes.gained.push(address);
  }
  return changes;
}
