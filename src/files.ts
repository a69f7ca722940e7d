/** What several steps do with files. */

import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readdir, readFile, realpath, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve } from 'node:path';

/** A file that is written beside its place and not yet in it. */
export interface FileAside {
  /** Puts it in its place, which takes no room on the disk: a reader meets the old file or the new one, and never half of one. */
  put: () => Promise<void>;
  /** Removes it. */
  drop: () => Promise<void>;
}

/** Writes a file beside its place; a symlink is followed to the file it leads to. Nothing is left where that fails, as on a full disk. */
export async function writeAside(path: string, data: string | Uint8Array): Promise<FileAside> {
  const place = await realpath(path).catch(() => path);
  await mkdir(dirname(place), { recursive: true });
  const aside = join(dirname(place), `.${basename(place)}-${process.pid}-${randomUUID().slice(0, 8)}`);
  const drop = () => rm(aside, { force: true });
  try {
    await writeFile(aside, data);
  } catch (problem) {
    await drop();
    throw problem;
  }
  return { put: () => rename(aside, place), drop };
}

/** Writes a file aside and puts it in its place. */
export async function writeWhole(path: string, data: string | Uint8Array): Promise<void> {
  await (await writeAside(path, data)).put();
}

export function hashOfBytes(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('base64url').slice(0, 32);
}

/** Bytes with their hash in front, as kept files are written: what was cut short or altered is known by it. */
export function signed(data: string | Uint8Array): Buffer {
  const bytes = Buffer.from(data);
  return Buffer.concat([Buffer.from(`${hashOfBytes(bytes)}\n`), bytes]);
}

/** The bytes behind a hash; null when they are not those that were written. */
export function unsigned(kept: Buffer): Buffer | null {
  const end = kept.indexOf('\n');
  const bytes = kept.subarray(end + 1);
  return end > 0 && kept.toString('latin1', 0, end) === hashOfBytes(bytes) ? bytes : null;
}

/** Names and bytes of all files below a folder that a pattern takes, as one hash. Throws when there is no such folder. */
export async function hashOfFiles(folder: string, taken: RegExp): Promise<string> {
  const hash = createHash('sha256');
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = entries.filter(entry => entry.isFile()).map(entry => join(entry.parentPath, entry.name));
  for (const path of paths.sort()) {
    const name = path.slice(folder.length);
    if (taken.test(name)) hash.update(`${name}\n`).update(await readFile(path));
  }
  return hash.digest('base64url');
}

/** Imports of other files of the project, as they stand in a source. */
const ownImports = /(?:from|import)\s*\(?\s*['"](\.{1,2}\/[^'"]+)['"]/g;

/**
 * Hash of a source file and of all files of the project that it imports, directly or by way of others: all of our code that can have a part in what
 * it computes. Throws when a file is not there.
 */
export async function hashOfModule(entry: string): Promise<string> {
  const sources = new Map<string, Buffer>();
  const queue = [resolve(entry)];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (sources.has(path)) continue;
    const source = await readFile(path);
    sources.set(path, source);
    for (const [, target] of source.toString('utf8').matchAll(ownImports))
      queue.push(resolve(dirname(path), target!));
  }
  const hash = createHash('sha256');
  for (const path of [...sources.keys()].sort()) {
    hash.update(`${relative(dirname(resolve(entry)), path)}\n`).update(sources.get(path)!);
  }
  return hash.digest('base64url');
}
