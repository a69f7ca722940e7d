/** The list of a published site put together with the list as it stands now: somebody may have added to it while the site was built. */

import { type Day, later } from '../days.ts';
import { listRows, type NewRow, withRows } from './listText.ts';

function byAddress(rows: readonly NewRow[]): Map<string, NewRow[]> {
  const lines = new Map<string, NewRow[]>();
  for (const row of rows) {
    const own = lines.get(row.address);
    if (own) own.push(row);
    else lines.set(row.address, [row]);
  }
  return lines;
}

/** How many of the published lines of an address need not be added: those before both lists parted, and all where this one went on since. */
function knownOf(here: readonly NewRow[], published: readonly NewRow[]): number {
  const parted = here.findIndex(({ leadsTo }, at) => published[at]?.leadsTo !== leadsTo);
  return parted < 0 ? here.length : published.length;
}

/**
 * The lines of a published list that the list here lacks, in their order. Of an address that was renamed, or led on, here since the site was
 * built nothing is added: what stands here is the later word. No line gets an earlier day than the one before it.
 */
export function unlistedRows(here: readonly NewRow[], published: readonly NewRow[]): NewRow[] {
  const publishedBy = byAddress(published);
  const lacking = new Set<NewRow>(published);
  for (const [address, lines] of byAddress(here)) {
    const rows = publishedBy.get(address) ?? [];
    const known = rows.slice(0, knownOf(lines, rows));
    for (const row of known) lacking.delete(row);
  }
  let last: Day | undefined = here.at(-1)?.since;
  return published.flatMap(row => {
    if (!lacking.has(row)) return [];
    last = last === undefined ? row.since : later(last, row.since);
    return { ...row, since: last };
  });
}

export interface MergedList {
  text: string;
  /** Lines that were added. */
  added: number;
}

/** Adds to the text of a list what a published list has beyond it. `here` is null where there is no list: then the published one is taken. */
export function mergedList(here: string | null, published: string): MergedList | { problem: string } {
  const rows = listRows(published);
  if ('problem' in rows) return { problem: `the published list: ${rows.problem}` };
  if (rows.length === 0) return { problem: 'the published list is empty' };
  if (here === null || here.trim() === '') return { text: published, added: rows.length };
  const own = listRows(here);
  if ('problem' in own) return { problem: `the list here: ${own.problem}` };
  const lacking = unlistedRows(own, rows);
  return { text: withRows(here, lacking), added: lacking.length };
}
