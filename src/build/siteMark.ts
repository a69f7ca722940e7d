/**
 * The mark that every site carries: a small file by which a later build knows that the folder is its own to replace. It is published with
 * the site, so it travels wherever the site is copied, and says nothing that no page says.
 */

import { closeSync, openSync, readdirSync, readFileSync, readSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Below the folder of the site. */
export const markFile = 'site-mark.json';

export interface SiteMark {
  /** Name of the yard whose site this is, and the address it was built for; null where they are not known. */
  yard: string | null;
  address: string | null;
}

const about = 'A build replaces the folder that holds this file.';

/** Marks a folder as a site, or one that is being built. */
export function writeMark(folder: string, { yard, address }: SiteMark): void {
  writeFileSync(join(folder, markFile), `${JSON.stringify({ about, yard, address }, null, 2)}\n`);
}

const textOrNull = (value: unknown) => (typeof value === 'string' ? value : null);

/** How stock.json has always begun. Sites that were built before there was a mark are known by it. */
const stockFile = 'stock.json';
const stockHead = /^\{"version":\d+,"asOf":"[\d-]+","yard":("(?:[^"\\]|\\.)*"),"lots":\[/;
const stockHeadBytes = 2000;

function markOfStock(folder: string): SiteMark | null {
  const file = openSync(join(folder, stockFile), 'r');
  try {
    const head = Buffer.alloc(stockHeadBytes);
    const read = readSync(file, head, 0, stockHeadBytes, 0);
    const yard = stockHead.exec(head.toString('utf8', 0, read))?.[1];
    return yard === undefined ? null : { yard: JSON.parse(yard), address: null };
  } finally {
    closeSync(file);
  }
}

/** The mark of a folder; null for one that no build has made. */
export function readMark(folder: string): SiteMark | null {
  try {
    const { yard, address } = JSON.parse(readFileSync(join(folder, markFile), 'utf8'));
    return { yard: textOrNull(yard), address: textOrNull(address) };
  } catch {
    // Not there, or cut short.
  }
  try {
    return markOfStock(folder);
  } catch {
    return null;
  }
}

/** Removes a site, its mark last, so that one whose removal was broken off is still known for what it is. */
export function removeSite(folder: string): void {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    return;
  }
  for (const name of names) {
    if (name !== markFile) rmSync(join(folder, name), { recursive: true, force: true, maxRetries: 3 });
  }
  rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
