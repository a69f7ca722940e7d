/** The list of pages for search engines: sitemaps.org protocol 0.9. */

import type { AddressOf } from './openFile.ts';
import { xmlText } from './xml.ts';

/** sitemaps.org, "Sitemap file location and limits": at most 50,000 addresses and 52,428,800 bytes in a file. */
const MOST_ADDRESSES = 50_000;
const MOST_BYTES = 52_428_800;

/** The index of the site's maps, which robots.txt names. */
export const sitemapPath = '/sitemap.xml';

const declaration = '<?xml version="1.0" encoding="UTF-8"?>\n';
const namespace = 'http://www.sitemaps.org/schemas/sitemap/0.9';

export interface SitemapFile {
  /** From the root of the site, such as `/sitemap-1.xml`. */
  path: string;
  text: string;
}

function listing(name: 'urlset' | 'sitemapindex', lines: readonly string[]): string {
  return `${declaration}<${name} xmlns="${namespace}">\n${lines.join('')}</${name}>\n`;
}

/** Lines in as few lists as the limits allow. Addresses are ASCII, so that a character is a byte. */
function portions(lines: readonly string[], mostAddresses: number, mostBytes: number): string[][] {
  const room = mostBytes - listing('urlset', []).length;
  const lists: string[][] = [];
  let bytes = 0;
  for (const line of lines) {
    const list = lists.at(-1);
    if (!list || list.length === mostAddresses || bytes + line.length > room) {
      lists.push([line]);
      bytes = line.length;
    } else {
      list.push(line);
      bytes += line.length;
    }
  }
  return lists;
}

/**
 * The sitemap of pages: an index and one or more lists. `paths` are those of the pages search engines should know, from the root of the
 * site, in any order. No day of change is told, since none is known without a clock. No pages give no files.
 */
export function sitemapFiles(
  paths: readonly string[],
  addressOf: AddressOf,
  mostAddresses: number = MOST_ADDRESSES,
  mostBytes: number = MOST_BYTES,
): SitemapFile[] {
  const lines = [...new Set(paths)].sort().map(path => `<url><loc>${xmlText(addressOf(path))}</loc></url>\n`);
  const lists = portions(lines, mostAddresses, mostBytes).map((list, index) => ({
    path: `/sitemap-${index + 1}.xml`,
    text: listing('urlset', list),
  }));
  if (lists.length === 0) return [];
  const index = lists.map(({ path }) => `<sitemap><loc>${xmlText(addressOf(path))}</loc></sitemap>\n`);
  return [{ path: sitemapPath, text: listing('sitemapindex', index) }, ...lists];
}

/** What a page says of itself to search engines. */
export interface PageForSearch {
  path: string;
  /** It asks to be left out. */
  unlisted: boolean;
  /** The address it gives for what it shows; null where it gives none. */
  canonical: string | null;
}

/**
 * Whether search engines should know a page: it names itself as the canonical address and does not ask to be left out. So versions of a
 * guide, pages that only send on and the page for missing ones stay out.
 */
export function isListed({ path, unlisted, canonical }: PageForSearch, addressOf: AddressOf): boolean {
  return !unlisted && canonical === addressOf(path);
}
