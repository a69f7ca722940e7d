/**
 * Whether there is anything to build: the site in the output folder was made by this program from these very files, for this day, and nobody has
 * touched it since. Then it is what a build would make.
 */

import { readdirSync, realpathSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { type OpenContent, shownFolder } from '../content.ts';
import { type FileAside, hashOfBytes, signed, unsigned, writeAside } from '../files.ts';
import { hashOf } from '../hash.ts';
import { stampOf } from './finishedSite.ts';

const recordFolder = resolve('.cache/builds');

/** What a build leaves for the next one. */
export interface BuildRecord {
  /** Digest of everything the site was made from. */
  inputs: string;
  /** Digest of the names, sizes and times of its files. */
  site: string;
  /** Files that were made or taken from the site before. */
  files: number;
  yardName: string;
  /** What the check said: warnings are told again. */
  report: string;
}

/** What the site hangs on besides the content. */
export interface BuildSettings {
  /** Hash of the program and its packages. */
  program: string;
  base: string;
  leaveList: boolean;
  /** Asks search engines to leave the site out. */
  preview: boolean;
}

/** A file of the content that a build has written itself. */
export interface WrittenFile {
  /** Path below the content folder. */
  path: string;
  text: string;
}

function stampOrNone(path: string): string | null {
  try {
    return stampOf(realpathSync(path));
  } catch {
    return null;
  }
}

/**
 * Digest of everything a site is made from. Photographs count by size and time, all other files by their bytes, those that the build has `written`
 * as they are now.
 */
export function inputDigest(
  settings: BuildSettings,
  { dir, asOf, publishedOn, files, photos }: OpenContent,
  written: readonly WrittenFile[] = [],
): string {
  const hashes = new Map<string, unknown>(
    files.map(({ path, bytes, unread, shown }) => [path, [hashOfBytes(bytes), unread, shown]]),
  );
  for (const { path, text } of written) hashes.set(path, [hashOfBytes(Buffer.from(text)), null, null]);
  const originals = photos.map(({ name, unread }) => [name, unread, stampOrNone(join(dir, 'photos', name))]);
  const { program, base, leaveList, preview } = settings;
  return hashOf([
    [program, base, leaveList, preview, dir, shownFolder(dir), asOf, publishedOn],
    [...hashes].sort(([a], [b]) => (a < b ? -1 : 1)),
    originals,
  ]);
}

/** Digest of the names, sizes and times of all files of a site, and of what else lies among them. */
export function siteDigest(folder: string): string {
  const stamps = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => !entry.isDirectory())
    .map(entry => {
      const path = join(entry.parentPath, entry.name);
      return `${relative(folder, path)} ${entry.isFile() ? stampOf(path) : 'no plain file'}`;
    });
  return hashOf(stamps.sort().join('\n'));
}

function recordPath(out: string): string {
  return join(recordFolder, hashOf(out));
}

/** The record of the last build into a folder, where its site is what a build of these inputs would make; null where anything is different. */
export async function upToDate(out: string, inputs: string): Promise<BuildRecord | null> {
  try {
    const bytes = unsigned(await readFile(recordPath(out)));
    const record: BuildRecord | null = bytes && JSON.parse(bytes.toString('utf8'));
    return record?.inputs === inputs && record.site === siteDigest(out) ? record : null;
  } catch {
    // No record, or no site.
    return null;
  }
}

/** Writes the record for the next build beside its place. */
export async function writeRecord(out: string, record: BuildRecord): Promise<FileAside> {
  return writeAside(recordPath(out), signed(JSON.stringify(record)));
}
