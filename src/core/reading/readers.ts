/** Reads one file of each kind, and keeps what it says among what was gathered before. */

import type { z } from 'zod';
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
import type { Draft, Entry } from './draft.ts';
import type { Gathered } from './gathered.ts';
import type { FileKind } from './layout.ts';
import { readReservations, readSales, readWaiting } from './orderFiles.ts';
import { type ReadRecord, readLots, readMarkdown, readRecord } from './recordFile.ts';
import { readTemperatures } from './temperatureFile.ts';
import { type ReadWalk, readWalk } from './walkFile.ts';
import type { YamlSource } from './yamlText.ts';

/** Stands in for the yard's currency while yard.yaml cannot be read; nothing is published then. */
const currencyForNow = 'USD';

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

/** How a file of each kind is read into what was gathered before. */
export const readers: Record<Exclude<FileKind, 'ignored' | 'stray'>, Reader> = {
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
