/**
 * Copies kept between builds in .cache/photos: one folder for each photograph, named by the hash of its bytes, of the settings and of the
 * library and our code that encoded it. Every file is known by the hash of its bytes, so a folder that is lost, cut or altered only costs time.
 */

import { createHash, randomUUID } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { hashOfBytes, hashOfModule, signed, unsigned } from '../files.ts';
import { mayBeTaken } from '../resultStore.ts';
import type { Copies } from './copies.ts';
import type { Format, Size } from './settings.ts';
import * as settings from './settings.ts';

const cacheFolder = resolve('.cache/photos');
const listName = 'photo.json';
const asideEnding = '.part';
const ownFolders = /^[0-9a-f]{16}(?:\..+\.part)?$/;

/** Days that copies nobody asked for are kept: long enough for a photograph to come back with another branch or yard. Our working figure. */
const daysKept = 30;
const dayMs = 86_400_000;

export interface KeptCopy extends Size {
  format: Format;
  /** Hash of its bytes. */
  hash: string;
}

export interface KeptPhoto {
  key: string;
  copies: KeptCopy[];
  placeholder: string;
}

const { frames, formats, background, placeholder } = settings;
const made = JSON.stringify([frames, formats, background, placeholder, sharp.versions]);

/** Our code that makes copies: the worker is started by its name, so nothing imports it. */
const ourCode = ['src/photos/copies.ts', 'src/photos/heicWorker.ts'];
/** Its hashes; '' where the sources are not at hand. */
let code: Promise<string> | undefined;

/** Name of everything made from an original: its bytes, the settings, our code, the versions of the library and its encoders. */
export async function keyOf(original: Uint8Array): Promise<string> {
  code ??= Promise.all(ourCode.map(file => hashOfModule(resolve(file)))).then(
    hashes => hashes.join(' '),
    () => '',
  );
  return createHash('sha256')
    .update(made)
    .update(await code)
    .update(original)
    .digest('hex')
    .slice(0, 16);
}

export function fileOf({ format, width }: Pick<KeptCopy, 'format' | 'width'>): string {
  return `${width}.${format}`;
}

/** What is kept under a key, when all of it is there as it was written; it counts as used now. */
export async function keptPhoto(key: string): Promise<KeptPhoto | null> {
  const folder = join(cacheFolder, key);
  try {
    if (!mayBeTaken((await stat(join(folder, listName))).mtimeMs)) return null;
    const list = unsigned(await readFile(join(folder, listName)));
    if (list === null) return null;
    const { copies, placeholder } = JSON.parse(list.toString('utf8')) as KeptPhoto;
    for (const copy of copies) {
      if (hashOfBytes(await readFile(join(folder, fileOf(copy)))) !== copy.hash) return null;
    }
    const now = new Date();
    await utimes(folder, now, now);
    return { key, copies, placeholder };
  } catch {
    return null;
  }
}

/** Keeps copies under a key. Written aside and moved as a whole, so that a broken run leaves no half photograph. */
export async function keepPhoto(key: string, { copies, placeholder }: Copies): Promise<KeptPhoto> {
  const aside = join(cacheFolder, `${key}.${randomUUID()}${asideEnding}`);
  const list = copies.map(({ bytes, ...copy }): KeptCopy => ({ ...copy, hash: hashOfBytes(bytes) }));
  try {
    await mkdir(aside, { recursive: true });
    for (const copy of copies) await writeFile(join(aside, fileOf(copy)), copy.bytes);
    await writeFile(join(aside, listName), signed(JSON.stringify({ copies: list, placeholder })));
    const folder = join(cacheFolder, key);
    await rm(folder, { recursive: true, force: true });
    await rename(aside, folder);
  } catch (problem) {
    await rm(aside, { recursive: true, force: true });
    // Another run may have kept the same photograph meanwhile.
    if ((await keptPhoto(key)) === null) throw problem;
  }
  return { key, copies: list, placeholder };
}

export async function keptBytes(key: string, file: string): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await readFile(join(cacheFolder, key, file)));
}

/** Clears what no build has used for a month, and what broken runs left behind a day ago. Returns how many folders went. */
export async function clearOldPhotos(now = Date.now()): Promise<number> {
  const names = await readdir(cacheFolder).catch(() => []);
  let cleared = 0;
  for (const name of names) {
    if (!ownFolders.test(name)) continue;
    const path = join(cacheFolder, name);
    const used = await stat(path).catch(() => null);
    const days = name.endsWith(asideEnding) ? 1 : daysKept;
    if (used === null || now - used.mtimeMs <= days * dayMs) continue;
    await rm(path, { recursive: true, force: true });
    cleared += 1;
  }
  return cleared;
}
