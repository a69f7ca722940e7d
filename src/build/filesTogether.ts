/**
 * Changes several files as one: whenever the process is killed, the next command finds the files of before, or puts the rest of the change in place.
 * A note in .build/ says what is under way; only renaming is left to do once every new text has been written beside its place.
 */

import { existsSync, realpathSync } from 'node:fs';
import { readFile, realpath, rename, rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { asideOf, type FileAside, hashOfBytes, writeAside, writeWhole } from '../files.ts';
import { oneAtATime } from './oneAtATime.ts';

export interface FileChange {
  path: string;
  /** Its name from now on, in the same folder; the same as `path` when only its text changes. */
  newPath: string;
  /** Null removes the file, which `path` and `newPath` both name. */
  text: string | null;
}

interface Note {
  /** `writing`: new texts are being written beside their places; `placing`: all are there. */
  stage: 'writing' | 'placing';
  files: { aside: string; place: string; path: string; newPath: string }[];
  /** Files that go away once the others are in place. */
  removed?: string[];
}

const folderOfNotes = fileURLToPath(new URL('../../.build/unfinished', import.meta.url));

function noteOf(folder: string): string {
  const real = existsSync(folder) ? realpathSync(folder) : resolve(folder);
  return join(folderOfNotes, `${hashOfBytes(Buffer.from(real))}.json`);
}

/** Null where there is none, or what is there was left by a power cut and says nothing. */
async function readNote(path: string): Promise<Note | null> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as Note;
  } catch {
    return null;
  }
}

/** Renames what is still there to be renamed: what is not was renamed before. */
async function renameIfThere(from: string, to: string): Promise<void> {
  await rename(from, to).catch((problem: NodeJS.ErrnoException) => {
    if (problem.code !== 'ENOENT') throw problem;
  });
}

/** Puts the new texts in place, following links to the files they lead to, and then gives files and links their new names. */
async function place({ files, removed = [] }: Note): Promise<void> {
  for (const file of files) await renameIfThere(file.aside, file.place);
  for (const { path, newPath } of files) if (newPath !== path) await renameIfThere(path, newPath);
  for (const path of removed) await rm(path, { force: true });
}

/** Throws where a change cannot be finished, such as in a folder that cannot be written in. */
async function settle(note: string): Promise<'undone' | 'finished' | null> {
  const left = await readNote(note);
  if (left === null) return null;
  if (left.stage === 'placing') await place(left);
  else for (const { aside } of left.files) await rm(aside, { force: true });
  await rm(note, { force: true });
  return left.stage === 'placing' ? 'finished' : 'undone';
}

const lockOf = (note: string) => `${note}.lock`;

/**
 * Finishes, or undoes, a change of the files of a content folder that was cut off; says which, and null where there is none. Every command calls it
 * first of all.
 */
export async function settleFiles(folder: string): Promise<'undone' | 'finished' | null> {
  const note = noteOf(folder);
  if (!existsSync(note)) return null;
  // Of a change that is under way now, this is the end.
  return oneAtATime(
    lockOf(note),
    () => undefined,
    () => settle(note),
  );
}

/** Changes and removes files of a content folder. Folders of new ones have to be there. Throws, with all as it was, when one of them cannot be written. */
export async function changeTogether(folder: string, changes: readonly FileChange[]): Promise<void> {
  const note = noteOf(folder);
  await oneAtATime(
    lockOf(note),
    () => undefined,
    async () => {
      await settle(note);
      const removed = changes.filter(({ text }) => text === null).map(({ path }) => path);
      const changed = changes.filter((each): each is FileChange & { text: string } => each.text !== null);
      const files = await Promise.all(
        changed.map(async ({ path, newPath }) => {
          const place = await realpath(path).catch(() => path);
          return { aside: asideOf(place), place, path, newPath };
        }),
      );
      await writeWhole(note, JSON.stringify({ stage: 'writing', files } satisfies Note));
      const written: FileAside[] = [];
      try {
        for (const [index, { aside, place }] of files.entries())
          written.push(await writeAside(place, changed[index]!.text, aside));
        await writeWhole(note, JSON.stringify({ stage: 'placing', files, removed } satisfies Note));
      } catch (problem) {
        for (const file of written) await file.drop();
        await rm(note, { force: true });
        throw problem;
      }
      await place({ stage: 'placing', files, removed });
      await rm(note, { force: true });
    },
  );
}
