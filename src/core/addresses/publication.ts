/** What publishing a site means for the list of addresses: which of the old ones would break, which have to lead on, which are new. */

import { type Day, later } from '../days.ts';
import type { AddressRow } from '../records/address.ts';
import { type Ledger, ledgerOf, pageOf, partOf, resolve } from './ledger.ts';
import { shortAddress } from './paths.ts';
import { isPartOfGivenUpPage, standIn } from './standIns.ts';

/** A page that was built, with the names of its parts that have to stay. */
export interface BuiltPage {
  /** `/guides/first-winter/`. */
  path: string;
  /** Ids of all its parts. */
  ids: readonly string[];
  /** Ids of those that readers link to. */
  promised: readonly string[];
}

export interface LostAddress {
  row: AddressRow;
  /** Where the list leads, when that is elsewhere; the circle it leads round in; or null when the address itself is gone. */
  end: { to: string } | { loop: string[] } | null;
}

export interface Redirect {
  /** A page that is not there, such as `/go/3kfd/`. */
  from: string;
  /** Where readers are sent, a named part included. */
  to: string;
}

export interface Publication {
  /** In the order of the list. A site with any of them must not be published. */
  lost: LostAddress[];
  /** By address. */
  redirects: Redirect[];
  /** Lines to add to the list; none for a site that is only looked at. */
  news: Omit<AddressRow, 'line'>[];
}

function redirectsOf(
  ledger: Ledger,
  codes: ReadonlyMap<string, string>,
  pages: ReadonlyMap<string, unknown>,
) {
  const redirects = new Map<string, string>();
  for (const { address } of ledger.latest.values()) {
    if (partOf(address) !== null || pages.has(address)) continue;
    const end = resolve(ledger, address);
    if (!('to' in end)) continue;
    const to = pages.has(pageOf(end.to)) ? end.to : standIn(ledger, pageOf(end.to), page => pages.has(page));
    if (to !== null) redirects.set(address, to);
  }
  for (const [target, code] of codes) {
    if (pages.has(target)) redirects.set(shortAddress(code), target);
  }
  return redirects;
}

/** The day a site was made for, and whether that is the day it is published: else it is only looked at. */
export interface SiteDay {
  asOf: Day;
  isPublished: boolean;
}

/**
 * Compares a built site with the list of addresses. For a site that is only looked at, that is the list as it stood on its day: lines of later
 * days are left alone, and nothing is added. New lines are of the day of publication, and never of an earlier day than the line before them. A
 * part of a page that has got another name is taken for reachable when its page is: a browser then shows the page from its top.
 */
export function publicationOf(
  rows: readonly AddressRow[],
  codes: ReadonlyMap<string, string>,
  built: readonly BuiltPage[],
  { asOf, isPublished }: SiteDay,
): Publication {
  const ledger = ledgerOf(isPublished ? rows : rows.filter(({ since }) => since <= asOf));
  const on = rows.map(({ since }) => since).reduce(later, asOf);
  const pages = new Map(built.map(page => [page.path, new Set(page.ids)]));
  const redirects = redirectsOf(ledger, codes, pages);

  const isThere = (address: string) => {
    const ids = pages.get(pageOf(address));
    const part = partOf(address);
    return ids !== undefined && (part === null || ids.has(part));
  };
  const isReached = (address: string, to: string) =>
    isThere(to) ||
    standIn(ledger, pageOf(to), page => pages.has(page)) !== null ||
    (pages.has(pageOf(to)) && isPartOfGivenUpPage(ledger, address));
  const lost: LostAddress[] = [];
  for (const row of ledger.latest.values()) {
    const end = resolve(ledger, row.address);
    if ('loop' in end) lost.push({ row, end });
    else if (!isReached(row.address, end.to)) {
      lost.push({ row, end: end.to === row.address ? null : end });
    }
  }

  const news: Publication['news'] = [];
  const add = (address: string, leadsTo: string | null) => {
    const known = ledger.latest.get(address);
    if (known === undefined || (leadsTo === null && known.leadsTo !== null)) {
      news.push({ address, since: on, leadsTo });
    }
  };
  for (const { path, promised } of [...built].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    add(path, null);
    for (const id of promised) add(`${path}#${id}`, null);
  }
  for (const [target, code] of codes) {
    if (pages.has(target)) add(shortAddress(code), target);
  }
  return {
    lost,
    redirects: [...redirects].map(([from, to]) => ({ from, to })).sort((a, b) => (a.from < b.from ? -1 : 1)),
    news: isPublished ? news : [],
  };
}
