/** Where the files of a yard speak of a record by its id, as edits that put another id there. */

import { isMap, isScalar, isSeq, parse, parseDocument, type Scalar } from 'yaml';
import { pageOf, partOf } from '../addresses/ledger.ts';
import { type RecordKind, recordAddress, recordOf } from '../addresses/paths.ts';
import type { TextEdit } from '../editing/textEdit.ts';
import { kindOf } from '../reading/layout.ts';
import { cellEdits } from './tableCells.ts';

export interface RenamedRecord {
  kind: RecordKind;
  from: string;
  to: string;
}

/** Edits of one file. Null when it cannot be taken apart. */
export function referenceEdits(path: string, text: string, renamed: RenamedRecord): TextEdit[] | null {
  switch (kindOf(path)) {
    case 'walk':
    case 'private-walk':
    case 'private-sales':
    case 'private-reservations':
      return renamed.kind === 'lot' ? cellEdits(text, 'lot', renamed.from, renamed.to) : [];
    case 'private-waiting':
      return renamed.kind === 'cultivar' ? cellEdits(text, 'cultivar', renamed.from, renamed.to) : [];
    case 'changes':
      return renamed.kind === 'lot' ? toldEdits(text, renamed.from, renamed.to) : [];
    case 'lots':
    case 'private-lots':
    case 'yard':
    case 'video':
      return yamlEdits(text, path, renamed);
    case 'cultivar':
    case 'guide':
      return linkEdits(text, renamed);
    default:
      return [];
  }
}

/** Lines of the log of changes that tell of the lot; the id that an event was told with stays. */
function toldEdits(text: string, from: string, to: string): TextEdit[] {
  const mark = `"lot":"${from}"`;
  const edits: TextEdit[] = [];
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + mark.length)) {
    edits.push({ start: at, end: at + mark.length, put: `"lot":"${to}"` });
  }
  return edits;
}

/** A part of a guide as chapters of videos link to it: `guide:first-winter#lifting`; null for any other address. */
function chapterLink(address: string): string | null {
  const guide = recordOf(pageOf(address));
  const part = partOf(address);
  return guide?.kind === 'guide' && part !== null ? `guide:${guide.id}#${part}` : null;
}

/** Edits of one file that speaks of an address, not of a record. Null when it cannot be taken apart. */
export function addressEdits(path: string, text: string, from: string, to: string): TextEdit[] | null {
  switch (kindOf(path)) {
    case 'cultivar':
    case 'guide':
      return linksOf(text).flatMap(({ start, target }) =>
        target === from ? [{ start, end: start + from.length, put: to }] : [],
      );
    case 'video': {
      const [old, now] = [chapterLink(from), chapterLink(to)];
      if (old === null || now === null) return [];
      const document = parseDocument(text, { schema: 'core', logLevel: 'error', uniqueKeys: false });
      if (document.errors.length > 0) return null;
      return chapterLinks(document.contents).flatMap(({ value, range }) => {
        if (value !== old || !range) return [];
        const [start, end] = range;
        return [{ start, end, put: text.slice(start, end).replace(old, () => now) }];
      });
    }
    default:
      return [];
  }
}

function yamlEdits(text: string, path: string, renamed: RenamedRecord): TextEdit[] | null {
  const document = parseDocument(text, { schema: 'core', logLevel: 'error', uniqueKeys: false });
  if (document.errors.length > 0) return null;
  return idsIn(kindOf(path), document.contents, renamed.kind).flatMap(scalar =>
    scalarEdit(text, scalar, renamed),
  );
}

/** Scalars that hold an id of the kind, or a link such as `cultivar:bellwether`. */
function idsIn(file: string, root: unknown, kind: RecordKind): Scalar[] {
  if (file === 'yard') return kind === 'place' ? valuesOf(root, 'home') : [];
  if (file === 'lots') {
    const lots = isSeq(root) ? root.items : [];
    return kind === 'lot' || kind === 'cultivar' ? lots.flatMap(lot => valuesOf(lot, kind)) : [];
  }
  if (file === 'private-lots') {
    return kind === 'lot' && isSeq(root) ? root.items.flatMap(lot => valuesOf(lot, kind)) : [];
  }
  return chapterLinks(root);
}

function chapterLinks(root: unknown): Scalar[] {
  return listOf(root, 'chapters')
    .flatMap(chapter => listOf(chapter, 'links'))
    .filter(isScalar);
}

function valuesOf(node: unknown, key: string): Scalar[] {
  const value = isMap(node) ? node.get(key, true) : undefined;
  return isScalar(value) ? [value] : [];
}

function listOf(node: unknown, key: string): unknown[] {
  const value = isMap(node) ? node.get(key, true) : undefined;
  return isSeq(value) ? value.items : [];
}

function scalarEdit(text: string, { value, range }: Scalar, { kind, from, to }: RenamedRecord): TextEdit[] {
  if (typeof value !== 'string' || !range) return [];
  const [start, end] = range;
  const [id = ''] = value.startsWith(`${kind}:`) ? value.slice(kind.length + 1).split('#') : [value];
  if (id !== from) return [];
  const written = text.slice(start, end);
  const at = written.lastIndexOf(from, written.includes('#') ? written.indexOf('#') : undefined);
  if (at < 0) return [];
  const put = `${written.slice(0, at)}${to}${written.slice(at + from.length)}`;
  return [{ start, end, put: typeof parse(put, { schema: 'core' }) === 'string' ? put : `"${put}"` }];
}

/** Links of Markdown to addresses of the site, with their places in the text. */
function linksOf(text: string): { start: number; target: string }[] {
  return [...text.matchAll(/\]\(\s*<?(\/[^\s)>]*)/g)].map(match => {
    const target = match[1]!;
    return { start: match.index + match[0].length - target.length, target };
  });
}

/** Links of Markdown to the page of the record: `[the fig](/cultivars/wrenfoot/)`. */
function linkEdits(text: string, { kind, from, to }: RenamedRecord): TextEdit[] {
  const address = recordAddress(kind, from);
  return linksOf(text)
    .filter(({ target }) => target.startsWith(address))
    .map(({ start }) => ({ start, end: start + address.length, put: recordAddress(kind, to) }));
}
