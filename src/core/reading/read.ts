/** Files of a content folder to records, or to everything that is wrong with them. */

import { type Day, parseDay } from '../days.ts';
import type { Orders } from '../records/orders.ts';
import type { Records } from '../records/records.ts';
import { allChecks } from './checks/all.ts';
import { orderFiles } from './checks/orders.ts';
import { photosToDecode, undecodable } from './checks/photoContents.ts';
import { decode } from './decode.ts';
import type { Diagnostic } from './diagnostic.ts';
import type { Draft, Entry, PhotoFile } from './draft.ts';
import { gather } from './gather.ts';
import { kindOf } from './layout.ts';
import { byText, inOrder, locate } from './locate.ts';
import { missingFiles } from './missingFiles.ts';
import { onTheDay } from './onTheDay.ts';
import type { Unread } from './unreadFile.ts';
import { readYaml } from './yamlText.ts';

export interface SourceFile {
  /** Path below the content folder, with `/`. */
  path: string;
  /** Empty for a file that was not read. */
  bytes: Uint8Array;
  /** Why it was not read, for one that was not. */
  unread?: UnreadFile;
  /** How people find it from the content folder, where that is not its path: `../secret/yard.yaml`. */
  shown?: string;
}

/** A file that was not read; `detail` is what the system said, '' where it said nothing. */
export interface UnreadFile {
  why: Unread;
  detail: string;
}

export interface Reading {
  /** Null when there is any error. */
  records: Records | null;
  /** Everything found, sorted by file, line, column and rule. */
  diagnostics: Diagnostic[];
  /** The private notes, which stay out of the records: for proving that they stay out of the site too. */
  privateNotes: PrivateNote[];
  /** Sales, plants set aside and people who wait, which stay out of the records as well. */
  orders: Orders;
  /** What stands in the private folder that a price may hang on. */
  privateParts: PrivateParts;
  /** Photographs that are shown and look whole, for the shell to decode: only that proves them. */
  photosToDecode: string[];
}

export interface PrivateNote {
  text: string;
  /** The file it stands in, from the content folder. */
  file: string;
  /** Its line there, where it stands in a table: the notes of walks do. */
  line?: number;
}

export interface PrivateParts {
  costs: boolean;
  /** Cultivars whose requests stand in it. */
  requests: ReadonlySet<string>;
}

/**
 * Reads all records of a content folder as they were known on a day. Whatever the bytes, problems come back as diagnostics;
 * nothing is thrown. The order of the files does not matter.
 */
export function readRecords(
  files: readonly SourceFile[],
  options: {
    asOf: Day;
    photos: readonly PhotoFile[];
    /** Reads each file by itself and leaves out the checks of how records fit together: for a yard that is checked as it will be. */
    alone?: boolean;
  },
): Reading {
  const { draft, problems, sources, kinds } = gather(files, options);
  problems.push(...missingFiles(files, kinds), ...(options.alone ? [] : allChecks(draft)));
  const elsewhere = new Map(files.flatMap(({ path, shown }) => (shown === undefined ? [] : [[path, shown]])));
  const diagnostics = locate(problems, sources).map(each => ({
    ...each,
    file: elsewhere.get(each.file) ?? each.file,
  }));
  const sound = diagnostics.every(({ level }) => level !== 'error');
  return {
    records: sound ? recordsOf(draft) : null,
    diagnostics,
    privateNotes: privateNotesOf(draft, elsewhere),
    orders: draft.orders,
    privateParts: privatePartsOf(draft),
    photosToDecode: photosToDecode(draft),
  };
}

/** A reading with the photographs that could not be decoded, by name, with what the decoder said of each. */
export function withUndecodable(reading: Reading, broken: ReadonlyMap<string, string>): Reading {
  if (broken.size === 0) return reading;
  const problems = [...broken].map(([name, why]) => undecodable(name, why));
  const found = locate(problems, { yaml: new Map(), tables: new Map() });
  return { ...reading, records: null, diagnostics: [...reading.diagnostics, ...found].sort(inOrder) };
}

function privatePartsOf({ privateYard, privateCultivars }: Draft): PrivateParts {
  const asked = privateCultivars.filter(({ written }) => written.requests !== undefined);
  return {
    costs: privateYard?.written.costs !== undefined,
    requests: new Set(asked.map(({ id }) => id)),
  };
}

/** `shown`: how people know a file that stands elsewhere. */
function privateNotesOf(draft: Draft, shown: ReadonlyMap<string, string>): PrivateNote[] {
  const { yard, cultivars, lots, privateYard, privateCultivars, privateLots } = draft;
  const written = [
    ...[...(yard ? [yard] : []), ...cultivars, ...lots],
    ...[...(privateYard ? [privateYard] : []), ...privateCultivars],
    ...privateLots.flatMap(({ file, written }) => written.map(each => ({ file, written: each }))),
  ];
  const ofRecords = written.flatMap(({ file, written: { private_note: text } }) =>
    text === undefined ? [] : [{ text, file: shown.get(file) ?? file }],
  );
  const ofWalks = draft.walkNotes.map(({ text, file, line }) => ({
    text,
    file: shown.get(file) ?? file,
    line,
  }));
  const ofOrders = Object.entries(orderFiles).flatMap(([table, file]) =>
    draft.orders[table as keyof Orders].flatMap(({ to, note, line }) =>
      [to, note].flatMap(text => (text === null ? [] : [{ text, file: shown.get(file) ?? file, line }])),
    ),
  );
  return [...ofRecords, ...ofWalks, ...ofOrders];
}

function recordsOf(draft: Draft): Records | null {
  if (!draft.yard) return null;
  return {
    yard: draft.yard.value,
    species: byId(draft.species),
    cultivars: byId(draft.cultivars),
    places: byId(draft.places),
    guides: byId(draft.guides),
    dailyRecords: new Map([...draft.dailyRecords].sort(([a], [b]) => byText(a, b))),
    addresses: draft.addresses,
    changes: draft.changes,
    ...onTheDay(draft),
  };
}

function byId<Written, Value>(entries: readonly Entry<Written, Value>[]): Map<string, Value> {
  const pairs = entries.map(({ id, value }) => [id, value] as const);
  return new Map(pairs.sort(([a], [b]) => byText(a, b)));
}

/** What the shell needs before it knows the day. Null for whatever yard.yaml does not say, or says wrongly: the check tells why. */
export function readClockSettings(files: readonly SourceFile[]): {
  timeZone: string | null;
  fixedDay: Day | null;
} {
  const nothing = { timeZone: null, fixedDay: null };
  const file = files.find(({ path }) => kindOf(path) === 'yard');
  const decoded = file && decode(file.path, file.bytes);
  if (!decoded || 'problem' in decoded) return nothing;
  const read = readYaml({ file: 'yard.yaml', text: decoded.text, firstLine: 1 });
  if ('problems' in read || read.value === null || typeof read.value !== 'object') return nothing;
  const { time_zone: zone, fixed_day: day } = read.value as { time_zone?: unknown; fixed_day?: unknown };
  return {
    timeZone: typeof zone === 'string' ? zone : null,
    fixedDay: typeof day === 'string' ? parseDay(day) : null,
  };
}
