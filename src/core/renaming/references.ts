/** Where the files of a yard speak of a record by its id, as edits that put another id there. */

import { isMap, isScalar, isSeq, parse, parseDocument, type Scalar } from 'yaml';
import { type RecordKind, recordAddress } from '../addresses/paths.ts';
import { kindOf } from '../reading/layout.ts';
import { cellEdits } from './tableCells.ts';
import type { TextEdit } from './textEdit.ts';

export interface RenamedRecord {
  kind: RecordKind;
  from: string;
  to: string;
}

/** Edits of one file. Null when it cannot be taken apart. */
export function referenceEdits(path: string, text: string, renamed: RenamedRecord): TextEdit[] | null {
  switch (kindOf(path)) {
    case 'walk':
      return renamed.kind === 'lot' ? cellEdits(text, 'lot', renamed.from, renamed.to) : [];
    case 'lots':
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

/** Links of Markdown to the page of the record: `[the fig](/cultivars/wrenfoot/)`. */
function linkEdits(text: string, { kind, from, to }: RenamedRecord): TextEdit[] {
  const address = recordAddress(kind, from);
  return [...text.matchAll(/\]\(\s*<?(\/[^\s)>]*)/g)]
    .filter(([, target]) => target!.startsWith(address))
    .map(match => {
      const start = match.index + match[0].length - match[1]!.length;
      return { start, end: start + address.length, put: recordAddress(kind, to) };
    });
}
