/**
 * What the last build published, and taking unchanged files from it. The list is kept in .cache/, with the hash of every file's bytes: a file
 * that was touched since, or a list that is lost, broken or of another program, only means that it is made again.
 */

import { copyFileSync, linkSync, mkdirSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { Catalogue } from '../core/catalogue.ts';
import type { PrivateNote } from '../core/reading/read.ts';
import { type FileAside, hashOfBytes, hashOfFiles, signed, unsigned, writeAside } from '../files.ts';
import { hashOf } from '../hash.ts';
import type { Site } from '../site/site.ts';
import type { FinishedFile, FinishedPage } from './finishedSite.ts';
import type { PrivacyScan } from './privacyScan.ts';

const listFolder = resolve('.cache/pages');

/** As JSON holds it. */
type ListedPage = Omit<FinishedPage, 'jumps'> & { jumps: string[] };

interface PublishedList {
  /** Hash of the global inputs. */
  globalInputs: string;
  /** Hash of the private notes that the files were searched for. */
  searchedFor: string;
  /** Input digest, hash of the bytes and what there is to know of the page, by file. Digest alone for a file that is not to be. */
  files: Record<string, [digest: string, bytes?: string, page?: ListedPage | null]>;
}

function listPath(out: string): string {
  return join(listFolder, `${hashOf(out)}.json`);
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

/**
 * The catalogue without what changes with stock, and without the climates, which follow from the places. Whatever is added to the catalogue
 * counts as a global input until somebody says otherwise here, so that forgetting costs time and never shows an old page.
 */
function withoutStock(all: Catalogue): unknown {
  const { lots: _lots, cultivars: _cultivars, codes: _codes, climates: _climates, ...rest } = all;
  return rest;
}

/** Hash of what every file depends on: the program and its packages, the photographs, the base path, the day, the yard, all but stock. */
export function globalInputsOf(program: string, { photos, base, all }: Site): string {
  return hashOf(program, photos, base, withoutStock(all));
}

/** The list of the last build; null when it is lost, or not as it was written. */
async function readList(out: string): Promise<PublishedList | null> {
  const bytes = await readFile(listPath(out)).catch(() => null);
  const list = bytes && unsigned(bytes);
  return list && JSON.parse(list.toString('utf8'));
}

/** The site as the last build has left it, if its global inputs are those of today. */
export interface LastBuild {
  /**
   * What there is to know of a file whose inputs have this digest, and which lies in the output folder as it was published and shows nothing
   * that is private today: a file, or `absent` for one that was not to be; null for any other.
   */
  unchanged: (file: string, digest: string) => FinishedFile | 'absent' | null;
}

export const noLastBuild: LastBuild = { unchanged: () => null };

/** The last build into an output folder. `notes` are the private ones of today: files that were searched for others are searched again. */
export async function lastBuild(
  out: string,
  globalInputs: string,
  { notes, scan: scanToday }: { notes: readonly PrivateNote[]; scan: PrivacyScan },
): Promise<LastBuild> {
  const list = await readList(out);
  if (list?.globalInputs !== globalInputs) return noLastBuild;
  const scan = list.searchedFor === hashOf(notes) ? null : scanToday;
  return {
    unchanged(file, digest) {
      const [before, hash, page = null] = list.files[file] ?? [];
      if (before !== digest) return null;
      if (hash === undefined) return 'absent';
      try {
        const bytes = readFileSync(join(out, file));
        if (hashOfBytes(bytes) !== hash || (scan !== null && scan.found(bytes) !== null)) return null;
      } catch {
        // Gone or not to be read: made again.
        return null;
      }
      return { file, hash, page: page && { ...page, jumps: new Set(page.jumps) } };
    },
  };
}

/** Takes files of the published site into the new one, without copying their bytes where the disk allows. */
export function linkFiles(out: string, built: string, files: readonly FinishedFile[]): void {
  const folders = new Set<string>();
  for (const { file } of files) {
    const to = join(built, file);
    const folder = dirname(to);
    if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
    folders.add(folder);
    try {
      linkSync(join(out, file), to);
    } catch {
      copyFileSync(join(out, file), to);
    }
  }
}

/** Writes the list for the next build beside its place. */
export async function writeList(
  out: string,
  globalInputs: string,
  digests: ReadonlyMap<string, string>,
  { files, notes }: { files: ReadonlyMap<string, FinishedFile>; notes: readonly PrivateNote[] },
): Promise<FileAside> {
  const listed: PublishedList['files'] = {};
  for (const [file, digest] of digests) {
    const finished = files.get(file);
    listed[file] = finished
      ? [digest, finished.hash, finished.page && { ...finished.page, jumps: [...finished.page.jumps] }]
      : [digest];
  }
  const list: PublishedList = { globalInputs, searchedFor: hashOf(notes), files: listed };
  return writeAside(listPath(out), signed(JSON.stringify(list)));
}
