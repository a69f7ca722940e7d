/** All files of a content folder to one draft, whatever their order. */

import type { Day } from '../days.ts';
import { decode, largestAddressListBytes } from './decode.ts';
import { leftOfDemonstration, leftUnread } from './demonstration.ts';
import type { KnownIds, PhotoFile } from './draft.ts';
import { type Gathered, nothingYet } from './gathered.ts';
import { badFileName, type FileKind, kindOf, stem, strayFile } from './layout.ts';
import { byText } from './locate.ts';
import { mergePrivate } from './mergePrivate.ts';
import type { SourceFile } from './read.ts';
import { readers } from './readers.ts';
import { unreadProblem } from './unreadFile.ts';

/** Kinds whose file name is an id that other records may refer to. */
const idKinds: Partial<Record<FileKind, keyof KnownIds>> = {
  species: 'species',
  cultivar: 'cultivar',
  place: 'place',
  guide: 'guide',
  video: 'video',
};
const namedKinds: ReadonlySet<FileKind> = new Set(['species', 'cultivar', 'place', 'guide', 'lots', 'video']);

export function gather(
  files: readonly SourceFile[],
  { asOf, photos }: { asOf: Day; photos: readonly PhotoFile[] },
): Gathered {
  const gathered = nothingYet(asOf, photos);
  const inOrder = [...files].sort((a, b) => byText(a.path, b.path));
  const yardFirst = [
    ...inOrder.filter(({ path }) => kindOf(path) === 'yard'),
    ...inOrder.filter(({ path }) => kindOf(path) !== 'yard'),
  ];
  for (const file of yardFirst) addFile(gathered, file);
  const { draft } = gathered;
  gathered.problems.push(...mergePrivate(draft));
  draft.lots.sort((a, b) => byText(a.id, b.id) || byText(a.file, b.file) || a.index - b.index);
  draft.walks.sort((a, b) => byText(a.day, b.day));
  return gathered;
}

function addFile(gathered: Gathered, { path, bytes, unread }: SourceFile): void {
  const kind = kindOf(path);
  if (unread) gathered.problems.push(unreadProblem(path, unread.why, unread.detail));
  if (kind === 'ignored' || (unread && kind === 'stray')) {
    // A whole folder may be missing, and with it every lot.
    gathered.draft.allLotsKnown &&= unread === undefined;
    return;
  }
  if (kind === 'stray') {
    gathered.problems.push(strayFile(path));
    return;
  }
  gathered.kinds.add(kind);
  const idKind = idKinds[kind];
  if (idKind) gathered.draft.ids[idKind].add(stem(path));
  if (kind === 'daily') gathered.draft.ids.daily.add(path.slice('places/'.length));
  if (unread) {
    if (kind === 'lots') gathered.draft.allLotsKnown = false;
    return;
  }
  const nameProblem = namedKinds.has(kind) ? badFileName(path) : null;
  if (nameProblem) gathered.problems.push(nameProblem);
  const grows = kind === 'addresses' || kind === 'changes';
  const decoded = decode(path, bytes, grows ? largestAddressListBytes : undefined);
  if ('problem' in decoded) {
    gathered.problems.push(decoded.problem);
    if (kind === 'lots') gathered.draft.allLotsKnown = false;
    return;
  }
  const read = () => readers[kind](gathered, path, decoded.text, bytes);
  // The yard comes first, and says whose the rest should be.
  if (kind === 'yard') read();
  const left = leftOfDemonstration(path, decoded.text, gathered.draft.yard?.value.address);
  if (left) gathered.problems.push(left);
  if (kind !== 'yard' && (left === null || !leftUnread.has(path))) read();
}
