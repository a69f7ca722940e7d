/** The files of a yard as texts, with the ids they hold. */

import { isMap, isSeq, parseDocument } from 'yaml';
import type { RecordKind } from '../addresses/paths.ts';
import { decode, largestAddressListBytes } from '../reading/decode.ts';
import { type FileKind, kindOf, stem } from '../reading/layout.ts';
import type { SourceFile } from '../reading/read.ts';
import type { YardTexts } from './rename.ts';

/** Kinds of file whose name is the id of what it holds. */
const named: Partial<Record<FileKind, RecordKind>> = {
  cultivar: 'cultivar',
  guide: 'guide',
  video: 'video',
  place: 'place',
};

/** Byte order marks and line ends stay in the texts, so that they can be written back as they were. */
export function yardTexts(files: readonly SourceFile[]): YardTexts {
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  const ids: Record<RecordKind, Set<string>> = {
    cultivar: new Set(),
    lot: new Set(),
    guide: new Set(),
    video: new Set(),
    place: new Set(),
  };
  const texts = new Map<string, string>();
  const unreadable: string[] = [];
  for (const { path, bytes, unread } of files) {
    const fileKind = kindOf(path);
    if (fileKind === 'ignored' || (fileKind === 'stray' && unread === undefined)) continue;
    if (unread !== undefined || !isText(path, bytes)) {
      unreadable.push(path);
      continue;
    }
    const text = decoder.decode(bytes);
    texts.set(path, text);
    const kind = named[fileKind];
    if (kind) ids[kind].add(stem(path));
    if (fileKind === 'lots') for (const id of lotIds(text)) ids.lot.add(id);
  }
  return { texts, unreadable, ids };
}

/** Whether bytes are text as the reading takes it. An empty file has nothing in it that could be lost. */
function isText(path: string, bytes: Uint8Array): boolean {
  const decoded = decode(path, bytes, largestAddressListBytes);
  return 'text' in decoded || decoded.problem.rule === 'file-empty';
}

function lotIds(text: string): string[] {
  const { contents } = parseDocument(text, { schema: 'core', logLevel: 'error', uniqueKeys: false });
  if (!isSeq(contents)) return [];
  return contents.items.flatMap(lot => {
    const id = isMap(lot) ? lot.get('lot') : undefined;
    return typeof id === 'string' ? [id] : [];
  });
}
