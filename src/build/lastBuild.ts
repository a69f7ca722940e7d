/**
 * What the last build published, and taking unchanged files from it. The list is kept in .cache/, with size and time of every file: a file that
 * was touched since, or a list that is lost, broken or of another program, only means that it is made again.
 */

import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Catalogue } from '../core/catalogue.ts';
import type { PrivateNote } from '../core/reading/read.ts';
import { type FileAside, hashOfBytes, hashOfFiles, signed, unsigned, writeAside } from '../files.ts';
import { hashOf } from '../hash.ts';
import type { Site } from '../site/site.ts';
import { type FinishedFile, type FinishedPage, stampOf } from './finishedSite.ts';
import type { PrivacyScan } from './privacyScan.ts';

const listFolder = resolve('.cache/pages');

/** As JSON holds it. */
type ListedPage = Omit<FinishedPage, 'fragments'> & { fragments: string[] };

interface PublishedList {
  /** Hash of the global inputs. */
  globalInputs: string;
  /** Hash of the private notes that the files were searched for. */
  searchedFor: string;
  /** Input digest, stamp and what there is to know of the page, by file. Digest alone for a file that is not to be. */
  files: Record<string, [digest: string, stamp?: string, page?: ListedPage | null]>;
}

function listPath(out: string): string {
  return join(listFolder, `${hashOf(out)}.json`);
}

/** The commands that build. */
const buildScripts = /^.(?:build|command)\.ts$/;

/** Hash of the program: its sources without what is written about them, its settings, the packages it uses and what runs them. */
export async function programHash(root: string): Promise<string> {
  const sources = await hashOfFiles(join(root, 'src'), /^(?!.*(?:\.test\.|\.md$))/);
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
export function globalInputsOf(program: string, { photos, base, preview, all }: Site): string {
  return hashOf(program, photos, base, preview, withoutStock(all));
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
      const [before, stamp, page = null] = list.files[file] ?? [];
      if (before !== digest) return null;
      if (stamp === undefined) return 'absent';
      try {
        const path = join(out, file);
        if (stampOf(path) !== stamp || (scan !== null && scan.found(readFileSync(path)) !== null))
          return null;
      } catch {
        // Gone or not to be read: made again.
        return null;
      }
      return { file, stamp, page: page && { ...page, fragments: new Set(page.fragments) } };
    },
  };
}

export interface LinkInput {
  out: string;
  built: string;
  files: readonly string[];
}

/** Takes files of the published site into the new one, in a thread of its own. What there is to know of them there. */
export async function linkFiles(
  out: string,
  built: string,
  files: readonly FinishedFile[],
): Promise<FinishedFile[]> {
  if (files.length === 0) return [];
  const workerData: LinkInput = { out, built, files: files.map(({ file }) => file) };
  const worker = new Worker(fileURLToPath(new URL('linkWorker.ts', import.meta.url)), { workerData });
  const { promise, resolve: linked, reject } = Promise.withResolvers<Map<string, string>>();
  worker.once('message', linked);
  worker.once('error', reject);
  worker.once('exit', code =>
    reject(new Error(`the thread that takes unchanged files has died (code ${code})`)),
  );
  const copied = await promise;
  return files.map(known => ({ ...known, stamp: copied.get(known.file) ?? known.stamp }));
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
      ? [
          digest,
          finished.stamp,
          finished.page && { ...finished.page, fragments: [...finished.page.fragments] },
        ]
      : [digest];
  }
  const list: PublishedList = { globalInputs, searchedFor: hashOf(notes), files: listed };
  return writeAside(listPath(out), signed(JSON.stringify(list)));
}
