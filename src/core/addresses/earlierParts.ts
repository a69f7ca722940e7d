/** Names that parts of pages had before: what a link of then names, and where a reader who follows it has to end. */

import { type Ledger, pageOf, partOf, resolve } from './ledger.ts';
import { recordOf } from './paths.ts';

/** Parts of one page that have gone, by the name that links of then have. */
export type EarlierParts = ReadonlyMap<string, string>;

/**
 * For each page of a record that lost a part: the part's name of then, and the address it leads to now. A reader who follows a link to it
 * comes to this page with the old name behind it, also where the page itself was renamed since (RFC 9110, 10.2.2).
 */
export function earlierParts(ledger: Ledger): Map<string, EarlierParts> {
  const parts = new Map<string, Map<string, string>>();
  for (const { address, leadsTo } of ledger.latest.values()) {
    const part = partOf(address);
    if (part === null || leadsTo === null) continue;
    const [page, end] = [resolve(ledger, pageOf(address)), resolve(ledger, address)];
    if (!('to' in page) || !('to' in end)) continue;
    const on = pageOf(page.to);
    if (recordOf(on) === null || end.to === on || end.to === `${on}#${part}`) continue;
    const ofPage = parts.get(on) ?? new Map<string, string>();
    parts.set(on, ofPage.set(part, end.to));
  }
  return parts;
}

/** The names that each part of a page had before; the same links may name parts that are on another page by now. */
export interface OldNames {
  /** By the name of today. */
  here: ReadonlyMap<string, readonly string[]>;
  elsewhere: readonly { name: string; to: string }[];
}

/** Old names of the parts of a page, `taken` left out: names that parts of today have. */
export function oldNames(
  earlier: EarlierParts | undefined,
  page: string,
  taken: ReadonlySet<string>,
): OldNames {
  const here = new Map<string, string[]>();
  const elsewhere: { name: string; to: string }[] = [];
  for (const [name, to] of earlier ?? []) {
    if (taken.has(name)) continue;
    const part = pageOf(to) === page ? partOf(to) : null;
    if (part === null) elsewhere.push({ name, to });
    else here.set(part, [...(here.get(part) ?? []), name]);
  }
  return { here, elsewhere };
}
