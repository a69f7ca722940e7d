/** What the last command did to the records, so that it can be taken back: kept in .build/, which git leaves out, since it may hold names. */

import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { hashOfBytes } from '../src/files.ts';

const build = join(resolve(dirname(fileURLToPath(import.meta.url)), '..'), '.build', 'records');

/** One for each content folder. */
const nameOf = (folder: string) => join(build, hashOfBytes(Buffer.from(resolve(folder))));
const fileOf = (folder: string) => `${nameOf(folder)}.json`;

/** Held by every command that changes records of a folder, so that two of them never work on one state. */
export const recordsLock = (folder: string): string => `${nameOf(folder)}.lock`;

export interface ChangedFile {
  /** Whole path. */
  path: string;
  /** Bytes of before in base64; null for a file that was not there. */
  before: string | null;
  /** Hash of what was written. */
  after: string;
}

export interface LastChange {
  folder: string;
  said: string;
  files: ChangedFile[];
}

export function changedFile(path: string, before: Uint8Array | null, after: Uint8Array): ChangedFile {
  return {
    path,
    before: before === null ? null : Buffer.from(before).toString('base64'),
    after: hashOfBytes(after),
  };
}

export async function rememberChange(change: LastChange): Promise<void> {
  await mkdir(build, { recursive: true });
  await writeFile(fileOf(change.folder), JSON.stringify(change), { mode: 0o600 });
}

/** The last change that was not taken back; null when there is none. */
export async function lastChange(folder: string): Promise<LastChange | null> {
  try {
    return JSON.parse(await readFile(fileOf(folder), 'utf8')) as LastChange;
  } catch {
    return null;
  }
}

export async function forgetChange(folder: string): Promise<void> {
  await rm(fileOf(folder), { force: true });
}
