/** A site that is built but not yet in place, looked through once: what every file is, and what every page has to be reached by. */

import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { hashOfBytes } from './publishedPages.ts';

export interface FinishedPage {
  /** From the root of the site, such as `/lots/26-layer-01/`. */
  path: string;
  /** Its named parts, in order. */
  ids: string[];
  /** Kept out of search engines by its own word. */
  unlisted: boolean;
  /** What it says is the address of what it shows; null where it names none. */
  canonical: string | null;
}

export interface FinishedSite {
  pages: FinishedPage[];
  /** Hash of the bytes of every file. */
  bytes: Map<string, string>;
}

/** Attributes are written by the generator, always with double quotes. */
const idPattern = /\sid="([^"]+)"/g;
const unlistedPattern = /<meta name="robots" content="noindex"/;
const canonicalPattern = /<link rel="canonical" href="([^"]+)"/;

/** Address of a page's file; null for a file that is no page. */
export function pathOfFile(file: string): string | null {
  if (file === 'index.html') return '/';
  if (file.endsWith('/index.html')) return `/${file.slice(0, -'index.html'.length)}`;
  return null;
}

function pageOf(path: string, text: string): FinishedPage {
  return {
    path,
    ids: Array.from(text.matchAll(idPattern), ([, id]) => id!),
    unlisted: unlistedPattern.test(text),
    canonical: canonicalPattern.exec(text)?.[1] ?? null,
  };
}

/** Reads every file of a built site. `look` is shown each of them in turn, and may throw. */
export function readSite(built: string, look: (file: string, bytes: Buffer) => void): FinishedSite {
  const files = readdirSync(built, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => relative(built, join(entry.parentPath, entry.name)).replaceAll(sep, '/'))
    .sort();
  const site: FinishedSite = { pages: [], bytes: new Map() };
  for (const file of files) {
    const bytes = readFileSync(join(built, file));
    look(file, bytes);
    site.bytes.set(file, hashOfBytes(bytes));
    const path = pathOfFile(file);
    if (path !== null) site.pages.push(pageOf(path, bytes.toString('utf8')));
  }
  return site;
}
