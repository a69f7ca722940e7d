/**
 * The files of a content folder as they are on the disk. Only plain files inside it are read: a link out of it could publish anything this
 * machine holds, and a pipe or device has no end. What is not read is told with its name, and never stops the rest.
 */

import { constants, type Dirent } from 'node:fs';
import { type FileHandle, open, readdir, realpath, stat } from 'node:fs/promises';
import { join, relative, resolve, sep } from 'node:path';
import { largestAddressListBytes } from './core/reading/decode.ts';
import type { PhotoFile } from './core/reading/draft.ts';
import { kindOf, privateFolder } from './core/reading/layout.ts';
import { photoFacts, photoHeadBytes, photoTailBytes } from './core/reading/photoFacts.ts';
import type { SourceFile } from './core/reading/read.ts';
import type { Unread } from './core/reading/unreadFile.ts';
import { inTurns } from './turns.ts';

const photoFolder = 'photos/';
/** Open files at once: systems allow a process some hundreds. */
const readAtOnce = 16;

/** A file or folder that is not read. */
class NotRead extends Error {
  readonly why: Unread;
  readonly detail: string;

  constructor(why: Unread, detail = '') {
    super(why);
    this.why = why;
    this.detail = detail;
  }
}

const byCode: Record<string, Unread> = {
  ENOENT: 'gone',
  ELOOP: 'loop',
  EACCES: 'not-permitted',
  EPERM: 'not-permitted',
  EISDIR: 'folder',
  ENOTDIR: 'no-folder',
  // A socket, or a device without a driver.
  ENXIO: 'special',
  ENODEV: 'special',
};

/** What the system said as a reason; other mistakes are the program's and are thrown on. */
function reasonOf(problem: unknown): NotRead {
  if (problem instanceof NotRead) return problem;
  const { code } = problem as NodeJS.ErrnoException;
  if (code === undefined) throw problem;
  const why = byCode[code];
  return why === undefined ? new NotRead('failed', code) : new NotRead(why);
}

interface Found {
  path: string;
  /** Set for what is known not to be readable before it is opened. */
  unread?: NotRead;
}

const isInside = (folder: string, path: string) => path === folder || path.startsWith(folder + sep);

/** Follows a link to a file inside the folder. */
async function followed(folder: string, path: string): Promise<Found> {
  const target = await realpath(join(folder, path));
  if (!isInside(folder, target)) return { path, unread: new NotRead('outside') };
  if ((await stat(target)).isDirectory()) return { path, unread: new NotRead('folder-link') };
  return { path };
}

/** A folder by the name of a file, such as yard.yaml. */
const shouldBeFile = (path: string) => !['stray', 'ignored'].includes(kindOf(path));

async function entryOf(folder: string, path: string, entry: Dirent): Promise<Found[]> {
  try {
    if (entry.isSymbolicLink()) return [await followed(folder, path)];
    if (entry.isDirectory())
      return shouldBeFile(path) ? [{ path, unread: new NotRead('folder') }] : await listFiles(folder, path);
    return [entry.isFile() ? { path } : { path, unread: new NotRead('special') }];
  } catch (problem) {
    return [{ path, unread: reasonOf(problem) }];
  }
}

/** All files below a folder as paths with `/`; hidden ones are left out. */
async function listFiles(folder: string, prefix = ''): Promise<Found[]> {
  const entries = await readdir(join(folder, prefix), { withFileTypes: true });
  const nested = await Promise.all(
    entries
      .filter(entry => !entry.name.startsWith('.'))
      .map(entry => entryOf(folder, prefix === '' ? entry.name : `${prefix}/${entry.name}`, entry)),
  );
  return nested.flat();
}

async function filesBelow(folder: string): Promise<{ root: string; found: Found[] }> {
  try {
    const root = await realpath(folder);
    const found = await listFiles(root);
    return { root, found: found.sort((a, b) => (a.path < b.path ? -1 : 1)) };
  } catch (problem) {
    const unread = reasonOf(problem);
    // That there is no content at all is told by its own rule.
    return { root: folder, found: unread.why === 'gone' ? [] : [{ path: '', unread }] };
  }
}

/** Opens a plain file. Without waiting, since opening a pipe waits for a writer; looked at once it is open, so that it cannot be exchanged. */
async function opened<T>(path: string, read: (file: FileHandle, size: number) => Promise<T>): Promise<T> {
  const file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const status = await file.stat();
    if (status.isDirectory()) throw new NotRead('folder');
    if (!status.isFile()) throw new NotRead('special');
    return await read(file, status.size);
  } finally {
    await file.close();
  }
}

async function readText(path: string): Promise<Uint8Array> {
  return opened(path, async (file, size) => {
    if (size > largestAddressListBytes) throw new NotRead('too-large', `${Math.round(size / 1024 ** 2)} MiB`);
    return new Uint8Array(await file.readFile());
  });
}

async function readPhotoEnds(path: string): Promise<PhotoFile['facts']> {
  return opened(path, async (file, size) => {
    const part = async (from: number, length: number) => {
      const { buffer, bytesRead } = await file.read(new Uint8Array(length), 0, length, from);
      return buffer.subarray(0, bytesRead);
    };
    const tailBytes = Math.min(size, photoTailBytes);
    const head = await part(0, Math.min(size, photoHeadBytes));
    return photoFacts({ size, head, tail: await part(size - tailBytes, tailBytes) });
  });
}

export interface ContentFiles {
  files: SourceFile[];
  /** Files in content/photos, of which only the start and the end are read. */
  photos: PhotoFile[];
}

async function readOne(root: string, { path, unread }: Found): Promise<SourceFile> {
  try {
    if (unread) throw unread;
    return { path, bytes: await readText(join(root, path)) };
  } catch (problem) {
    const { why, detail } = reasonOf(problem);
    return { path, bytes: new Uint8Array(), unread: { why, detail } };
  }
}

async function readPhoto(root: string, { path, unread }: Found): Promise<PhotoFile> {
  const name = path.slice(photoFolder.length);
  try {
    if (unread) throw unread;
    return { name, facts: await readPhotoEnds(join(root, path)) };
  } catch (problem) {
    const { why, detail } = reasonOf(problem);
    return { name, facts: null, unread: { why, detail } };
  }
}

/** Where private keys may stand: PRIVATE_DIR, else `private` in the content folder. */
export function privateDir(folder: string): string {
  return process.env.PRIVATE_DIR ? resolve(process.env.PRIVATE_DIR) : join(folder, privateFolder);
}

/** Where a file of the content is, by its path. */
export function placeOf(folder: string, path: string): string {
  const inPrivate = path.startsWith(`${privateFolder}/`);
  return inPrivate ? join(privateDir(folder), path.slice(privateFolder.length + 1)) : join(folder, path);
}

/** Files of a private folder that lies elsewhere, as if they lay in the content folder. One that was named and is not there is told. */
async function privateFilesElsewhere(folder: string): Promise<SourceFile[]> {
  const dir = privateDir(folder);
  const shown = (path: string) => relative(folder, join(dir, path)).replaceAll(sep, '/');
  const { root, found } = await filesBelow(dir);
  const there =
    found.length > 0 ||
    (await stat(dir).then(
      () => true,
      () => false,
    ));
  const all = there ? found : [{ path: '', unread: new NotRead('gone') }];
  return Promise.all(
    all.map(async each => {
      const file = await readOne(root, each);
      const path = file.path === '' ? privateFolder : `${privateFolder}/${file.path}`;
      return { ...file, path, shown: shown(file.path) };
    }),
  );
}

/** Reads every file of a content folder and of its private folder. What cannot be read is there all the same, with the reason. */
export async function readContentFiles(folder: string): Promise<ContentFiles> {
  const { root, found } = await filesBelow(folder);
  const elsewhere = process.env.PRIVATE_DIR !== undefined && process.env.PRIVATE_DIR !== '';
  const isPhoto = ({ path }: Found) => path.startsWith(photoFolder);
  const isPrivate = ({ path }: Found) => path.startsWith(`${privateFolder}/`);
  const records = found.filter(each => !isPhoto(each) && !(elsewhere && isPrivate(each)));
  const turn = inTurns(readAtOnce);
  const files = await Promise.all(records.map(each => turn(() => readOne(root, each))));
  return {
    files: elsewhere ? [...files, ...(await privateFilesElsewhere(folder))] : files,
    photos: await Promise.all(found.filter(isPhoto).map(each => turn(() => readPhoto(root, each)))),
  };
}
