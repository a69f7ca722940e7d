/** All files of a content folder to one draft, whatever their order. */

import type { z } from 'zod';
import type { Day } from '../days.ts';
import { normaliseCultivar, writtenCultivar } from '../records/cultivar.ts';
import { normaliseGuide, writtenGuide } from '../records/guide.ts';
import { normalisePlace, writtenPlace } from '../records/place.ts';
import { writtenPrivateCultivar, writtenPrivateLots, writtenPrivateYard } from '../records/private.ts';
import { normaliseSpecies, writtenSpecies } from '../records/species.ts';
import { normaliseVideo, writtenVideo } from '../records/video.ts';
import { privateWalkColumns, type Walk } from '../records/walk.ts';
import { normaliseYard, writtenYard } from '../records/yard.ts';
import { readAddresses } from './addressFile.ts';
import { readChanges } from './changeFile.ts';
import type { RawTable } from './csvText.ts';
import { decode, largestAddressListBytes } from './decode.ts';
import { leftOfDemonstration, leftUnread } from './demonstration.ts';
import type { Draft, Entry, KnownIds, PhotoFile } from './draft.ts';
import { badFileName, type FileKind, kindOf, stem, strayFile } from './layout.ts';
import { byText, type Sources } from './locate.ts';
import { mergePrivate } from './mergePrivate.ts';
import { readReservations, readSales, readWaiting } from './orderFiles.ts';
import type { Problem } from './problem.ts';
import type { SourceFile } from './read.ts';
import { type ReadRecord, readLots, readMarkdown, readRecord } from './recordFile.ts';
import { readTemperatures } from './temperatureFile.ts';
import { unreadProblem } from './unreadFile.ts';
import { type ReadWalk, readWalk } from './walkFile.ts';
import type { YamlSource } from './yamlText.ts';

export interface Gathered {
  draft: Draft;
  problems: Problem[];
  sources: Sources;
  /** Kinds of files that were there, readable or not. */
  kinds: Set<FileKind>;
}

/** Kinds whose file name is an id that other records may refer to. */
const idKinds: Partial<Record<FileKind, keyof KnownIds>> = {
  species: 'species',
  cultivar: 'cultivar',
  place: 'place',
  guide: 'guide',
  video: 'video',
};
const namedKinds: ReadonlySet<FileKind> = new Set(['species', 'cultivar', 'place', 'guide', 'lots', 'video']);

/** Stands in for the yard's currency while yard.yaml cannot be read; nothing is published then. */
const currencyForNow = 'USD';

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

function nothingYet(asOf: Day, photos: readonly PhotoFile[]): Gathered {
  return {
    draft: {
      asOf,
      yard: null,
      species: [],
      cultivars: [],
      lots: [],
      lotPlaces: [],
      allLotsKnown: true,
      walks: [],
      typedMeasures: [],
      walkNotes: [],
      places: [],
      guides: [],
      videos: [],
      temperatures: [],
      addresses: [],
      changes: [],
      dailyRecords: new Map(),
      costs: null,
      privateYard: null,
      privateCultivars: [],
      privateLots: [],
      privateWalks: [],
      orders: { sales: [], reservations: [], waiting: [] },
      photos,
      ids: {
        species: new Set(),
        cultivar: new Set(),
        lot: new Set(),
        place: new Set(),
        guide: new Set(),
        video: new Set(),
        daily: new Set(),
      },
    },
    problems: [],
    sources: { yaml: new Map(), tables: new Map() },
    kinds: new Set(),
  };
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

type Reader = (gathered: Gathered, path: string, text: string, bytes: Uint8Array) => void;

const readBefore = new WeakMap<Uint8Array, { path: string; read: ReadRecord<unknown, unknown> }>();

/** A record that was read from the same bytes before: commands read the yard before and after their change, and most of it is the same. */
function readOnce<Written, Value>(
  path: string,
  bytes: Uint8Array,
  read: () => ReadRecord<Written, Value>,
): ReadRecord<Written, Value> {
  let found = readBefore.get(bytes);
  if (found?.path !== path) {
    found = { path, read: read() };
    readBefore.set(bytes, found);
  }
  const { entry, ...rest } = found.read as ReadRecord<Written, Value>;
  // What is merged from the private folder is put into the entry.
  return { entry: entry && { ...entry }, ...rest };
}

/** A reader of files that hold one record each. */
function recordReader<Written, Value>(
  schema: z.ZodType<Written>,
  normalise: (id: string, written: Written) => Value,
  keep: (draft: Draft, entry: Entry<Written, Value>) => void,
): Reader {
  return (gathered, path, text, bytes) => {
    const read = readOnce(path, bytes, () => readRecord(path, text, schema, normalise));
    keepRecord(gathered, path, read, keep);
  };
}

function keepRecord<Written, Value>(
  { draft, problems, sources }: Gathered,
  path: string,
  read: ReadRecord<Written, Value>,
  keep: (draft: Draft, entry: Entry<Written, Value>) => void,
): void {
  problems.push(...read.problems);
  if (read.source) sources.yaml.set(path, read.source);
  if (read.entry) keep(draft, read.entry);
}

function keepTable({ sources }: Gathered, path: string, table: RawTable | null): void {
  if (table) sources.tables.set(path, table);
}

function keepWalk(gathered: Gathered, path: string, read: ReadWalk, walks: Walk[]): void {
  keepTable(gathered, path, read.table);
  gathered.problems.push(...read.problems);
  gathered.draft.walkNotes.push(...read.notes);
  gathered.draft.typedMeasures.push(...read.measures);
  if (read.walk) walks.push(read.walk);
}

function keepSource({ sources }: Gathered, path: string, source: YamlSource): void {
  sources.yaml.set(path, source);
}

const readers: Record<Exclude<FileKind, 'ignored' | 'stray'>, Reader> = {
  yard: recordReader(
    writtenYard,
    (_, written) => normaliseYard(written),
    (draft, entry) => {
      draft.yard = entry;
    },
  ),
  species: recordReader(writtenSpecies, normaliseSpecies, (draft, entry) => draft.species.push(entry)),
  place: recordReader(writtenPlace, normalisePlace, (draft, entry) => draft.places.push(entry)),
  video: recordReader(writtenVideo, normaliseVideo, (draft, entry) => draft.videos.push(entry)),
  cultivar(gathered, path, text, bytes) {
    const read = readOnce(path, bytes, () => readMarkdown(path, text, writtenCultivar, normaliseCultivar));
    keepRecord(gathered, path, read, (draft, entry) => draft.cultivars.push(entry));
  },
  guide(gathered, path, text, bytes) {
    const read = readOnce(path, bytes, () => readMarkdown(path, text, writtenGuide, normaliseGuide));
    keepRecord(gathered, path, read, (draft, entry) => draft.guides.push(entry));
  },
  'private-yard': recordReader(
    writtenPrivateYard,
    () => null,
    (draft, entry) => {
      draft.privateYard = entry;
    },
  ),
  'private-cultivar': recordReader(
    writtenPrivateCultivar,
    () => null,
    (draft, entry) => draft.privateCultivars.push(entry),
  ),
  'private-lots': recordReader(
    writtenPrivateLots,
    () => null,
    (draft, entry) => draft.privateLots.push(entry),
  ),
  lots(gathered, path, text) {
    const { draft, problems } = gathered;
    const {
      entries,
      places,
      allKnown,
      problems: found,
      source,
    } = readLots(path, text, draft.yard?.value.currency ?? currencyForNow);
    keepSource(gathered, path, source);
    draft.lots.push(...entries);
    draft.allLotsKnown &&= allKnown;
    draft.lotPlaces.push(...places);
    for (const { id } of places) draft.ids.lot.add(id);
    problems.push(...found);
  },
  'private-sales'(gathered, path, text) {
    const { yard, orders } = gathered.draft;
    const { rows, problems, table } = readSales(path, text, yard?.value.currency ?? currencyForNow);
    keepTable(gathered, path, table);
    gathered.problems.push(...problems);
    orders.sales = rows;
  },
  'private-reservations'(gathered, path, text) {
    const { rows, problems, table } = readReservations(path, text);
    keepTable(gathered, path, table);
    gathered.problems.push(...problems);
    gathered.draft.orders.reservations = rows;
  },
  'private-waiting'(gathered, path, text) {
    const { rows, problems, table } = readWaiting(path, text);
    keepTable(gathered, path, table);
    gathered.problems.push(...problems);
    gathered.draft.orders.waiting = rows;
  },
  walk(gathered, path, text) {
    keepWalk(gathered, path, readWalk(path, text), gathered.draft.walks);
  },
  'private-walk'(gathered, path, text) {
    keepWalk(gathered, path, readWalk(path, text, privateWalkColumns), gathered.draft.privateWalks);
  },
  temperatures(gathered, path, text) {
    const { readings, problems, table } = readTemperatures(path, text);
    keepTable(gathered, path, table);
    gathered.problems.push(...problems);
    gathered.draft.temperatures.push(...readings);
  },
  addresses({ draft, problems }, path, text) {
    const read = readAddresses(path, text);
    problems.push(...read.problems);
    draft.addresses = read.rows;
  },
  changes({ draft, problems }, path, text) {
    const read = readChanges(path, text);
    problems.push(...read.problems);
    draft.changes = read.lines;
  },
  daily({ draft }, path, text) {
    draft.dailyRecords.set(path.slice('places/'.length), text);
  },
};
