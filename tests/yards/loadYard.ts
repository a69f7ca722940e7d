/** A whole yard as a fixture: the common base with what a folder changes in it. */

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parse } from 'yaml';
import { type Day, day } from '../../src/core/days.ts';
import type { PhotoFile } from '../../src/core/reading/draft.ts';
import { photoEnds, photoFacts } from '../../src/core/reading/photoFacts.ts';
import type { SourceFile } from '../../src/core/reading/read.ts';

export const yardsFolder = import.meta.dirname;

/** The day the fixtures are read for, unless `as-of.txt` says otherwise. */
const usualDay = '2026-11-25';

export interface FixtureYard {
  files: SourceFile[];
  photos: PhotoFile[];
  asOf: Day;
}

interface Edit {
  file: string;
  find: string;
  put: string;
}

function filesBelow(folder: string): Map<string, Uint8Array> {
  if (!existsSync(folder)) return new Map();
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter(entry =>
    entry.isFile(),
  );
  return new Map(
    entries.map(entry => {
      const path = join(entry.parentPath, entry.name);
      return [relative(folder, path).replaceAll('\\', '/'), new Uint8Array(readFileSync(path))];
    }),
  );
}

function textOf(path: string): string | null {
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}

function applyEdit(files: Map<string, Uint8Array>, { file, find, put }: Edit): void {
  const text = new TextDecoder().decode(files.get(file) ?? new Uint8Array());
  const parts = text.split(find);
  if (parts.length !== 2) throw new Error(`"${find}" is ${parts.length - 1} times in ${file}, not once`);
  files.set(file, new TextEncoder().encode(parts.join(put)));
}

/**
 * Files of a fixture: those of `base`, replaced by or added from its own `content`, less the paths in `delete.txt` (one a line; `*` for
 * all), with the replacements of `edits.yaml` made, a list of `{file, find, put}`. Photos come as names with what their ends tell.
 */
export function loadYard(name: string): FixtureYard {
  const folder = join(yardsFolder, name);
  const all = filesBelow(join(yardsFolder, 'base/content'));
  for (const path of (textOf(join(folder, 'delete.txt')) ?? '').split('\n').filter(line => line !== '')) {
    if (path === '*') all.clear();
    else if (!all.delete(path)) throw new Error(`${path} is not in the base yard`);
  }
  for (const [path, bytes] of filesBelow(join(folder, 'content'))) all.set(path, bytes);
  for (const edit of (parse(textOf(join(folder, 'edits.yaml')) ?? '') ?? []) as Edit[]) applyEdit(all, edit);
  const isPhoto = (path: string) => path.startsWith('photos/');
  return {
    files: [...all].filter(([path]) => !isPhoto(path)).map(([path, bytes]) => ({ path, bytes })),
    photos: [...all]
      .filter(([path]) => isPhoto(path))
      .map(([path, bytes]) => ({
        name: path.slice('photos/'.length),
        facts: photoFacts(photoEnds(bytes)),
      })),
    asOf: day((textOf(join(folder, 'as-of.txt')) ?? usualDay).trim()),
  };
}

/** Names of all fixtures. */
export function yardNames(): string[] {
  return readdirSync(yardsFolder, { withFileTypes: true })
    .filter(entry => entry.isDirectory())
    .map(entry => entry.name)
    .sort();
}
