/** A site that is built but not yet in place, looked through once: what every file is, and what every page has to be reached by. */

import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

export interface FinishedPage {
  /** From the root of the site, such as `/lots/26-layer-01/`. */
  path: string;
  /** Its named parts, in order. */
  ids: string[];
  /** Those of its parts that a link on it leads to. */
  fragments: Set<string>;
  /** Kept out of search engines by its own word. */
  unlisted: boolean;
  /** What it says is the address of what it shows; null where it names none. */
  canonical: string | null;
}

export interface FinishedFile {
  /** Below the output folder. */
  file: string;
  /** Its size and when it was written: what was touched since has another. */
  stamp: string;
  /** Null for a file that is no page. */
  page: FinishedPage | null;
}

export interface FinishedSite {
  /** By path. */
  pages: FinishedPage[];
  /** By their path below the output folder. */
  files: Map<string, FinishedFile>;
}

/** The generator writes attributes with double quotes. */
const unlistedMark = '<meta name="robots" content="noindex"';
const canonicalMark = '<link rel="canonical" href="';
const idMark = 'id="';
const fragmentMark = 'href="#';
const whiteSpace = new Set(Buffer.from(' \n\t'));

/** Address of a page's file; null for a file that is no page. */
export function pathOfFile(file: string): string | null {
  if (file === 'index.html') return '/';
  if (file.endsWith('/index.html')) return `/${file.slice(0, -'index.html'.length)}`;
  return null;
}

/**
 * Text from a place up to the next double quote. Read from the bytes, not cut from the page's text: a piece cut from a text keeps the
 * whole text in memory, which for a large site comes to hundreds of megabytes.
 */
function quotedAt(page: Buffer, from: number): string {
  return page.toString('utf8', from, page.indexOf('"', from));
}

function idsOf(page: Buffer): string[] {
  const ids = [];
  for (let at = page.indexOf(idMark); at > 0; at = page.indexOf(idMark, at + idMark.length)) {
    if (whiteSpace.has(page[at - 1]!)) ids.push(quotedAt(page, at + idMark.length));
  }
  return ids;
}

function fragmentsOf(page: Buffer): Set<string> {
  const fragments = new Set<string>();
  for (
    let at = page.indexOf(fragmentMark);
    at > 0;
    at = page.indexOf(fragmentMark, at + fragmentMark.length)
  ) {
    fragments.add(quotedAt(page, at + fragmentMark.length));
  }
  return fragments;
}

function pageFrom(path: string, page: Buffer): FinishedPage {
  const canonical = page.indexOf(canonicalMark);
  return {
    path,
    ids: idsOf(page),
    fragments: fragmentsOf(page),
    unlisted: page.includes(unlistedMark),
    canonical: canonical < 0 ? null : quotedAt(page, canonical + canonicalMark.length),
  };
}

/**
 * Size and time of last change of a file, which tell whether it was touched, as they do for make and rsync. Reading every file of a large site to
 * hash it took a quarter of a build that changes nothing. Throws when there is none.
 */
export function stampOf(path: string): string {
  // Of a link its own, so that one in the place of a file is another file.
  const { size, mtimeMs } = lstatSync(path);
  return `${size} ${mtimeMs}`;
}

/** What there is to know of a written file. A page that only sends readers on is none that the site has to be reached by. */
export function finishedFile(folder: string, file: string, bytes: Buffer, sendsOn = false): FinishedFile {
  const path = sendsOn ? null : pathOfFile(file);
  return { file, stamp: stampOf(join(folder, file)), page: path === null ? null : pageFrom(path, bytes) };
}

/**
 * Reads the files of a built site that are not known from whoever wrote them. `inspect` is shown each file that is read in turn, and may throw.
 * Throws when a file that was said to be written is not there.
 */
export function readSite(
  built: string,
  known: readonly FinishedFile[],
  inspect: (file: string, bytes: Buffer) => void,
): FinishedSite {
  const isKnown = new Set(known.map(({ file }) => file));
  const there = readdirSync(built, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => relative(built, join(entry.parentPath, entry.name)).replaceAll(sep, '/'));
  const isThere = new Set(there);
  const lost = [...isKnown].find(file => !isThere.has(file));
  if (lost !== undefined) throw new Error(`the site was not published: ${lost} is missing from it`);
  const read = there
    .filter(file => !isKnown.has(file))
    .sort()
    .map(file => {
      const bytes = readFileSync(join(built, file));
      inspect(file, bytes);
      return finishedFile(built, file, bytes);
    });
  const files = [...known, ...read];
  return {
    pages: files.flatMap(({ page }) => page ?? []).sort((a, b) => (a.path < b.path ? -1 : 1)),
    files: new Map(files.map(each => [each.file, each])),
  };
}
