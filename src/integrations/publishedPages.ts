/**
 * What the last build published, and taking pages from it. The list is kept in .cache/, with the hash of every page's bytes: a page that
 * was touched since, or a list that is lost, broken or of another program, only means that the page is rendered again.
 */

import { copyFileSync, linkSync, mkdirSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { Catalogue } from '../core/catalogue.ts';
import type { PrivateNote } from '../core/reading/read.ts';
import { type FileAside, hashOfBytes, hashOfFiles, signed, unsigned, writeAside } from '../files.ts';
import { groundOf, hashOf, type PageKeys } from '../pageReuse.ts';
import type { FinishedFile, FinishedPage } from './finishedSite.ts';
import type { PrivacyScan } from './privacyScan.ts';

const listFolder = resolve('.cache/pages');

/** As JSON holds it. */
type ListedPage = Omit<FinishedPage, 'jumps'> & { jumps: string[] };

interface PublishedList {
  ground: string;
  /** Hash of the private notes that the pages were searched for. */
  searchedFor: string;
  /** Key, hash of the bytes and what there is to know of the page, by file. */
  pages: Record<string, [key: string, bytes: string, page: ListedPage | null]>;
}

function listPath(out: string): string {
  return join(listFolder, `${hashOf(out)}.json`);
}

export interface Ground {
  /** Hash of the program. */
  program: string;
  content: string;
  base: string;
  catalogue: Catalogue;
}

/** The commands that build. */
const buildScripts = /^.(?:build|command)\.ts$/;

/** Hash of the program: its sources, its settings, the packages it uses and what runs them. */
export async function programHash(root: string): Promise<string> {
  const sources = await hashOfFiles(join(root, 'src'), /^(?!.*\.test\.)/);
  // Laid into every site as they are.
  const laidIn = await hashOfFiles(join(root, 'public'), /./);
  const settings = [
    await readFile(join(root, 'astro.config.mjs')),
    await readFile(join(root, 'tsconfig.json')),
    await readFile(join(root, 'package-lock.json')),
  ];
  const commands = await hashOfFiles(join(root, 'scripts'), buildScripts);
  return hashOf(sources, laidIn, commands, settings.map(hashOfBytes), process.version);
}

/** Hash of what every page rests on: the program and its packages, the photographs, the base path, the day, the yard, all but stock. */
export async function groundHash({ program, content, base, catalogue }: Ground): Promise<string> {
  // A yard without photographs has no such folder.
  const photos = await hashOfFiles(join(content, 'photos'), /./).catch(() => null);
  return hashOf(program, photos, base, groundOf(catalogue));
}

/** The list of the last build; null when it is lost, or not as it was written. */
async function readList(out: string): Promise<PublishedList | null> {
  const bytes = await readFile(listPath(out)).catch(() => null);
  const list = bytes && unsigned(bytes);
  return list && JSON.parse(list.toString('utf8'));
}

/** The site as the last build has left it, if it rests on the same ground. */
export interface PublishedSite {
  /** Key of every reusable page by its file. */
  keys: PageKeys;
  /** What there is to know of a page that stands in the output folder as it was published, and shows nothing that is private today; null for any other. */
  untouched: (file: string) => FinishedFile | null;
}

export const nothingPublished: PublishedSite = { keys: new Map(), untouched: () => null };

/** The site in an output folder. `notes` are the private ones of today: pages that were searched for others are searched again. */
export async function publishedSite(
  out: string,
  ground: string,
  { notes, scan: scanToday }: { notes: readonly PrivateNote[]; scan: PrivacyScan },
): Promise<PublishedSite> {
  const list = await readList(out);
  if (list?.ground !== ground) return nothingPublished;
  const scan = list.searchedFor === hashOf(notes) ? null : scanToday;
  return {
    keys: new Map(Object.entries(list.pages).map(([file, [key]]) => [file, key])),
    untouched(file) {
      const listed = list.pages[file];
      if (listed === undefined) return null;
      const [, hash, page] = listed;
      try {
        const bytes = readFileSync(join(out, file));
        if (hashOfBytes(bytes) !== hash || (scan !== null && scan.found(bytes) !== null)) return null;
      } catch {
        // Gone or not to be read: rendered again.
        return null;
      }
      return { file, hash, page: page && { ...page, jumps: new Set(page.jumps) } };
    },
  };
}

/** Takes a file of the published site into the new one, without copying its bytes where the disk allows. */
export function takeOver(out: string, built: string, file: string): void {
  const to = join(built, file);
  mkdirSync(dirname(to), { recursive: true });
  try {
    linkSync(join(out, file), to);
  } catch {
    copyFileSync(join(out, file), to);
  }
}

/** Writes the list for the next build beside its place: the key of every reusable page, and what there is to know of it. */
export async function keepList(
  out: string,
  ground: string,
  keys: PageKeys,
  { files, notes }: { files: ReadonlyMap<string, FinishedFile>; notes: readonly PrivateNote[] },
): Promise<FileAside> {
  const pages: PublishedList['pages'] = {};
  for (const [file, key] of keys) {
    const { hash, page } = files.get(file)!;
    pages[file] = [key, hash, page && { ...page, jumps: [...page.jumps] }];
  }
  const list: PublishedList = { ground, searchedFor: hashOf(notes), pages };
  return writeAside(listPath(out), signed(JSON.stringify(list)));
}
