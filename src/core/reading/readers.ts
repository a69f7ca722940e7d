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
import type { Problem } from './problem.ts';
import { type ReadRecord, readLots, readMarkdown, readRecord } from './recordFile.ts';
import { readTemperatures } from './temperatureFile.ts';
import { type ReadWalk, readWalk } from './walkFile.ts';
import type { YamlSource } from './yamlText.ts';

/** Stands in for the yard's currency while yard.yaml cannot be read; nothing is published then. */
const currencyForNow = 'USD';

function currencyOf({ draft }: Gathered): string {
  return draft.yard?.value.currency ?? currencyForNow;
}

type Reader = (gathered: Gathered, path: string, text: string, bytes: Uint8Array) => void;

/** What one file says, with what that hangs on besides its bytes: its path, and the currency of the yard for lots and sales. */
export interface FileReading {
  key: string;
  read: { problems: Problem[] };
}

const readBefore = new WeakMap<Uint8Array, FileReading>();

/** What the bytes of a file were read as; undefined when they were not read yet. */
export function readingOf(bytes: Uint8Array): FileReading | undefined {
  return readBefore.get(bytes);
}

/** Lets bytes be read as they were read before, perhaps by another command. */
export function reuseReading(bytes: Uint8Array, reading: FileReading): void {
  readBefore.set(bytes, reading);
}

/** Reads bytes, unless they were read before: commands read the yard before and after their change, and most of it is the same. */
function readOnce<Read extends FileReading['read']>(key: string, bytes: Uint8Array, read: () => Read): Read {
  let found = readBefore.get(bytes);
  if (found?.key !== key) {
    found = { key, read: read() };
    readBefore.set(bytes, found);
  }
  return found.read as Read;
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
  // A copy, since what is merged from the private folder is put into it.
  if (read.entry) keep(draft, { ...read.entry });
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
  lots(gathered, path, text, bytes) {
    const { draft, problems } = gathered;
    const currency = currencyOf(gathered);
    const {
      entries,
      places,
      allKnown,
      problems: found,
      source,
    } = readOnce(`${path} ${currency}`, bytes, () => readLots(path, text, currency));
    keepSource(gathered, path, source);
    draft.lots.push(...entries);
    draft.allLotsKnown &&= allKnown;
    draft.lotPlaces.push(...places);
    for (const { id } of places) draft.ids.lot.add(id);
    problems.push(...found);
  },
  'private-sales'(gathered, path, text, bytes) {
    const { orders } = gathered.draft;
    const currency = currencyOf(gathered);
    const { rows, problems, table } = readOnce(`${path} ${currency}`, bytes, () =>
      readSales(path, text, currency),
    );
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
  walk(gathered, path, text, bytes) {
    const read = readOnce(path, bytes, () => readWalk(path, text));
    keepWalk(gathered, path, read, gathered.draft.walks);
  },
  'private-walk'(gathered, path, text, bytes) {
    const read = readOnce(path, bytes, () => readWalk(path, text, privateWalkColumns));
    keepWalk(gathered, path, read, gathered.draft.privateWalks);
  },
  temperatures(gathered, path, text, bytes) {
    const { readings, problems, table } = readOnce(path, bytes, () => readTemperatures(path, text));
    keepTable(gathered, path, table);
    gathered.problems.push(...problems);
    gathered.draft.temperatures.push(...readings);
  },
  addresses({ draft, problems }, path, text, bytes) {
    const read = readOnce(path, bytes, () => readAddresses(path, text));
    problems.push(...read.problems);
    draft.addresses = read.rows;
  },
  changes({ draft, problems }, path, text, bytes) {
    const read = readOnce(path, bytes, () => readChanges(path, text));
    problems.push(...read.problems);
    draft.changes = read.lines;
  },
  daily({ draft }, path, text) {
    draft.dailyRecords.set(path.slice('places/'.length), text);
  },
};
