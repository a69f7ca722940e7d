/** A rename as a whole: what changes in every file of a yard, or why it cannot be done. Nothing is written here. */

import { type Ledger, ledgerOf, pageOf, partOf, resolve } from '../addresses/ledger.ts';
import { withRows } from '../addresses/listText.ts';
import { addressMoved, type Moved, recordMoved } from '../addresses/moved.ts';
import { codeOf, type RecordKind, recordAddress, recordFolders, recordOf } from '../addresses/paths.ts';
import { isAddress, isTooLong, likelyAddress } from '../addresses/shape.ts';
import { type Day, later } from '../days.ts';
import { withEdits } from '../editing/textEdit.ts';
import { addressesFile, readAddresses } from '../reading/addressFile.ts';
import { privateFolder, slug } from '../reading/layout.ts';
import { nearest } from '../reading/nearest.ts';
import { meant, quote } from '../reading/problem.ts';
import { idPattern } from '../records/common.ts';
import { addressEdits, referenceEdits } from './references.ts';
import { renamedRows } from './renamedRows.ts';

export type RenameRequest =
  | { kind: RecordKind; from: string; to: string }
  | { kind: 'address'; from: string; to: string };

interface ChangedFile {
  path: string;
  /** Its name from now on; the same as `path` when only its text changes. */
  newPath: string;
  text: string;
}

export interface RenamePlan {
  /** By path; the list of addresses is among them. */
  files: ChangedFile[];
  /** Lines added to the list of addresses. */
  lines: number;
}

/** What the yard is before: texts of its files by path, and the ids it has. */
export interface YardTexts {
  texts: ReadonlyMap<string, string>;
  /** Paths of files that are no text, or could not be read: what they say is not known, and nothing may be written in their place. */
  unreadable: readonly string[];
  ids: Readonly<Record<RecordKind, ReadonlySet<string>>>;
}

/** Plans a rename; the text of a refusal is a whole sentence. `today` is the day of the new lines, unless the list is ahead of it. */
export function planRename(
  yard: YardTexts,
  request: RenameRequest,
  today: Day,
): RenamePlan | { refused: string } {
  const [unreadable] = yard.unreadable;
  if (unreadable !== undefined)
    return { refused: `content/${unreadable} cannot be read; npm run check says why.` };
  const listed = readAddresses(addressesFile, yard.texts.get(addressesFile) ?? 'address,since,leads_to\n');
  if (listed.problems.length > 0) {
    return { refused: `content/${addressesFile} has errors; npm run check says which.` };
  }
  const ledger = ledgerOf(listed.rows);
  const last = listed.rows.at(-1)?.since ?? today;
  const since = later(today, last);
  return request.kind === 'address'
    ? planAddress(yard, ledger, request, since)
    : planRecord(yard, ledger, request, since);
}

function withList(
  { texts }: YardTexts,
  ledger: Ledger,
  moved: Moved,
  always: string,
  since: Day,
): RenamePlan {
  const rows = renamedRows(ledger, moved, always, since).filter(
    ({ address, leadsTo }) => ledger.latest.get(address)?.leadsTo !== leadsTo,
  );
  const text = withRows(texts.get(addressesFile) ?? '', rows);
  return { files: [{ path: addressesFile, newPath: addressesFile, text }], lines: rows.length };
}

function planRecord(
  yard: YardTexts,
  ledger: Ledger,
  { kind, from, to }: { kind: RecordKind; from: string; to: string },
  since: Day,
): RenamePlan | { refused: string } {
  const known = yard.ids[kind];
  const movedByHand = !known.has(from) && known.has(to) && ledger.latest.has(recordAddress(kind, from));
  const refused = recordRefusal(yard, ledger, { kind, from, to }, movedByHand);
  if (refused !== null) return { refused };
  const files: ChangedFile[] = [];
  for (const [path, text] of yard.texts) {
    const edits = referenceEdits(path, text, { kind, from, to });
    if (edits === null) return { refused: `content/${path} cannot be read; npm run check says why.` };
    const newPath = path.replace(
      new RegExp(`^(${privateFolder}/)?${recordFolders[kind]}/${from}(?=\\.(?:md|yaml)$)`),
      (_, folder = '') => `${folder}${target(kind, to)}`,
    );
    if (newPath !== path && yard.texts.has(newPath))
      return { refused: `content/${newPath} is there already; put both files into one first.` };
    if (edits.length > 0 || newPath !== path) files.push({ path, newPath, text: withEdits(text, edits) });
  }
  const list = withList(yard, ledger, recordMoved({ kind, from, to }), recordAddress(kind, from), since);
  return { files: inOrder([...files, ...list.files]), lines: list.lines };
}

function inOrder(files: readonly ChangedFile[]): ChangedFile[] {
  return [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Lots live in lists, all other records have a file named after their id. */
function target(kind: RecordKind, to: string): string {
  return `${recordFolders[kind]}/${to}`;
}

function recordRefusal(
  { ids }: YardTexts,
  ledger: Ledger,
  { kind, from, to }: { kind: RecordKind; from: string; to: string },
  movedByHand: boolean,
): string | null {
  if (!idPattern.test(to) || to.length > 64) {
    const better = slug(to);
    return `${quote(to)} cannot be an id; ${better ? `did you mean "${better}"?` : 'ids are lower-case letters, digits and single hyphens.'}`;
  }
  if (from === to) return `the ${kind} is called ${quote(to)} already.`;
  if (movedByHand) return null;
  if (!ids[kind].has(from)) {
    const guess = meant(nearest(from, ids[kind])).trim();
    return `there is no ${kind} ${quote(from)}; ${guess || `npm run check lists what is wrong in content/${recordFolders[kind]}.`}`;
  }
  if (ids[kind].has(to)) return `there is a ${kind} ${quote(to)} already; choose another id.`;
  const address = recordAddress(kind, to);
  const before = ledger.latest.get(address);
  const end = before && resolve(ledger, address);
  if (before && !(end && 'to' in end && end.to === recordAddress(kind, from))) {
    return `${address} was published on ${before.since} for something else; choose another id.`;
  }
  return null;
}

function planAddress(
  yard: YardTexts,
  ledger: Ledger,
  { from, to }: { from: string; to: string },
  since: Day,
): RenamePlan | { refused: string } {
  const end = isAddress(to) ? resolve(ledger, to) : null;
  // A heading that has its earlier words again: its part is there again, and no longer leads on.
  const isBack = partOf(to) !== null && end !== null && 'to' in end && end.to === from;
  const straight = end && 'to' in end && !isBack ? end.to : to;
  const refused = addressRefusal(yard, ledger, from, to, straight);
  if (refused !== null) return { refused };
  const files: ChangedFile[] = [];
  for (const [path, text] of yard.texts) {
    const edits = addressEdits(path, text, from, straight);
    if (edits === null) return { refused: `content/${path} cannot be read; npm run check says why.` };
    if (edits.length > 0) files.push({ path, newPath: path, text: withEdits(text, edits) });
  }
  const list = withList(yard, ledger, addressMoved(from, straight), from, since);
  return { files: inOrder([...files, ...list.files]), lines: list.lines };
}

function addressRefusal(
  { ids }: YardTexts,
  ledger: Ledger,
  from: string,
  to: string,
  straight: string,
): string | null {
  for (const address of [from, to]) {
    if (isAddress(address)) continue;
    if (isTooLong(address))
      return `an address of ${address.length} signs is too long for a page; choose a shorter one.`;
    const guess = meant(likelyAddress(address)).trim();
    return `${quote(address)} is no address of this site; ${guess || 'write it from the root of the site, such as /lots/26-layer-01/.'}`;
  }
  if (codeOf(from) !== null)
    return `${from} is printed, so it goes on leading to the same thing; rename the page it leads to.`;
  if (from === to) return 'an address cannot lead to itself.';
  if (straight === from || pageOf(straight) === from)
    return `${to} leads to ${from} already, so readers would go round in a circle.`;
  const own = recordOf(from);
  if (own && ids[own.kind].has(own.id)) {
    return `${from} is the page of a ${own.kind} that is there; to rename it: npm run rename -- ${own.kind} ${own.id} NEW`;
  }
  const page = pageOf(straight);
  const record = recordOf(page);
  const listed = ledger.latest.get(page);
  const known = record ? ids[record.kind].has(record.id) : listed !== undefined && listed.leadsTo === null;
  if (known || (partOf(from) !== null && pageOf(from) === page)) return null;
  const pages = [...ledger.latest.values()]
    .filter(({ leadsTo }) => leadsTo === null)
    .map(({ address }) => address);
  const records = (Object.keys(recordFolders) as RecordKind[]).flatMap(kind =>
    [...ids[kind]].map(id => recordAddress(kind, id)),
  );
  const guess = meant(nearest(page, [...pages, ...records])).trim();
  return `no page ${page} was ever published; ${guess || 'give the address of a page of the site.'}`;
}
