/** What several steps do with files. */

import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** Writes a file aside and puts it in its place: a reader meets the old file or the new one, and never half of one. */
export async function writeWhole(path: string, data: string | Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const aside = join(dirname(path), `.${basename(path)}-${process.pid}`);
  await writeFile(aside, data);
  await rename(aside, path);
}

export function hashOfBytes(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('base64url').slice(0, 32);
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
