/** What several steps do with files. */

import { createHash, randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import {
  chmod,
  copyFile,
  link,
  mkdir,
  readdir,
  readFile,
  realpath,
  rename,
  rm,
  stat,
  writeFile,
} from 'node:fs/promises';
import { basename, dirname, join, relative, resolve } from 'node:path';

/** A file that is written beside its place and not yet in it. */
export interface FileAside {
  /** Puts it in its place, which takes no room on the disk: a reader meets the old file or the new one, and never half of one. */
  put: () => Promise<void>;
  /** Removes it. */
  drop: () => Promise<void>;
}

/** A name beside a file, hidden, that no other process writes to; the number in it tells this one. */
export function asideOf(place: string): string {
  return join(dirname(place), `.${basename(place)}-${process.pid}-${randomUUID().slice(0, 8)}`);
}

/**
 * Writes a file beside its place; a symlink is followed to the file it leads to, and who may read that one may read the new one. Nothing is left where
 * that fails, as on a full disk.
 */
export async function writeAside(path: string, data: string | Uint8Array, name?: string): Promise<FileAside> {
  const place = await realpath(path).catch(() => path);
  await mkdir(dirname(place), { recursive: true });
  const aside = name ?? asideOf(place);
  const drop = () => rm(aside, { force: true });
  const rights = await stat(place).then(
    ({ mode }) => mode & 0o777,
    () => null,
  );
  try {
    await writeFile(aside, data, { flag: 'wx', ...(rights === null ? {} : { mode: rights }) });
    // The mask of the process has taken rights away from a new file.
    if (rights !== null) await chmod(aside, rights);
  } catch (problem) {
    await drop();
    throw problem;
  }
  return { put: () => rename(aside, place), drop };
}

/** File systems without hard links, and what they say: FAT, some shares. */
const noLinks = new Set(['EPERM', 'ENOTSUP', 'ENOSYS', 'EOPNOTSUPP']);

/** Writes a file that is not there yet, whole or not at all. Throws EEXIST where there is one, and leaves that alone. */
export async function writeNew(path: string, data: string | Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const aside = asideOf(path);
  try {
    await writeFile(aside, data, { flag: 'wx' });
    await link(aside, path).catch((problem: NodeJS.ErrnoException) => {
      if (!noLinks.has(problem.code ?? '')) throw problem;
      return copyFile(aside, path, constants.COPYFILE_EXCL);
    });
  } finally {
    await rm(aside, { force: true });
  }
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
