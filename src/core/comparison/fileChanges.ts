/** Files that differ between two states of the content. */

import type { PhotoFile } from '../reading/draft.ts';
import type { SourceFile } from '../reading/read.ts';

export interface FileChanges {
  added: string[];
  changed: string[];
  removed: string[];
}

/** A state of the content as files. */
export interface ContentState {
  files: readonly SourceFile[];
  photos: readonly PhotoFile[];
}

const carriageReturn = 13;

/** Whether two files hold the same lines; ends of lines may have been converted on the way out of the repository. */
function sameText(a: Uint8Array, b: Uint8Array): boolean {
  let [i, j] = [0, 0];
  for (; i <= a.length && j <= b.length; i += 1, j += 1) {
    while (a[i] === carriageReturn) i += 1;
    while (b[j] === carriageReturn) j += 1;
    if (a[i] !== b[j]) return false;
  }
  return i > a.length && j > b.length;
}

/** Files by path below the content folder. Photographs are told apart by name only; `exchanged` names those with another picture. */
export function fileChanges(
  before: ContentState,
  after: ContentState,
  exchanged: readonly string[] = [],
): FileChanges {
  const earlier = new Map(before.files.map(({ path, bytes }) => [path, bytes]));
  const later = new Map(after.files.map(({ path, bytes }) => [path, bytes]));
  const photo = ({ name }: PhotoFile) => `photos/${name}`;
  const photosBefore = new Set(before.photos.map(photo));
  const photosAfter = new Set(after.photos.map(photo));
  const notIn = (paths: Iterable<string>, others: { has(path: string): boolean }) =>
    [...paths].filter(path => !others.has(path));
  return {
    added: [...notIn(later.keys(), earlier), ...notIn(photosAfter, photosBefore)].sort(),
    changed: [...later]
      .filter(([path, bytes]) => earlier.has(path) && !sameText(earlier.get(path)!, bytes))
      .map(([path]) => path)
      .concat(exchanged.map(name => `photos/${name}`))
      .sort(),
    removed: [...notIn(earlier.keys(), later), ...notIn(photosBefore, photosAfter)].sort(),
  };
}
