/**
 * The one door to content/: files in, records and catalogue out. Pages, commands and the collections of the site all come
 * through here; nothing else reads the grower's files.
 */

import { relative, resolve } from 'node:path';
import { readContentFiles } from './contentFolder.ts';
import { assemble, type Catalogue } from './core/catalogue.ts';
import { figuresOfPlace } from './core/climate/place.ts';
import { type ClimateSummary, climateSummary } from './core/climate/summary.ts';
import { type Day, parseDay } from './core/days.ts';
import type { EvidenceTable } from './core/evidence/table.ts';
import { type ListHistory, listHistory } from './core/history/history.ts';
import type { PhotoFile } from './core/reading/draft.ts';
import {
  type Reading,
  readClockSettings,
  readRecords,
  type SourceFile,
  withUndecodable,
} from './core/reading/read.ts';
import { textReport } from './core/reading/report.ts';
import type { Records } from './core/records/records.ts';
import type { Species } from './core/records/species.ts';
import { reuseReadings } from './keptReadings.ts';
import { rememberResult } from './resultStore.ts';
import { brokenPhotos } from './wholePhotos.ts';

export { placeOf, privateDir, readContentFiles } from './contentFolder.ts';

/** Where the grower's files are: CONTENT_DIR, else content/ in the project. */
export function contentDir(): string {
  return resolve(process.env.CONTENT_DIR ?? 'content');
}

/** A folder as people know it: from where they stand when that is shorter. */
export function shownFolder(dir: string): string {
  const near = relative(process.cwd(), dir);
  return near === '' || near.startsWith('..') ? dir : near;
}

/** Today on the wall calendar of a time zone. The only place that reads a clock. */
function todayIn(timeZone: string): Day {
  return new Intl.DateTimeFormat('en-CA', { timeZone, dateStyle: 'short' }).format(new Date()) as Day;
}

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/** A day given by flag or variable that is no day. */
class AsOfError extends Error {
  override name = 'AsOfError';
}

/** The day on which what is built is published: the yard's fixed day, else today in the yard's time zone. */
export function publicationDay(files: readonly SourceFile[]): Day {
  const { timeZone, fixedDay } = readClockSettings(files);
  if (fixedDay !== null) return fixedDay;
  return todayIn(timeZone !== null && isTimeZone(timeZone) ? timeZone : 'UTC');
}

/**
 * The day everything is computed for: the day given, else AS_OF, else the day of publication. Throws an AsOfError when the day given does not
 * exist.
 */
export function chooseDay(files: readonly SourceFile[], given: string | undefined): Day {
  const asked = given ?? process.env.AS_OF;
  if (asked !== undefined && asked !== '') {
    const parsed = parseDay(asked);
    if (parsed === null) throw new AsOfError(`"${asked}" is no calendar day; write it as 2026-11-25.`);
    return parsed;
  }
  return publicationDay(files);
}

/** The files of a content folder, not checked yet, and the day they are to be shown for. */
export interface OpenContent {
  dir: string;
  asOf: Day;
  /** The day on which it is published. Where `asOf` is another, the site is only looked at. */
  publishedOn: Day;
  files: SourceFile[];
  photos: PhotoFile[];
}

export interface LoadedContent extends OpenContent {
  reading: Reading;
}

/** Reads the files of a content folder; what cannot be read is among them, with the reason. Throws an AsOfError. */
export async function openContent(
  options: { dir?: string; asOf?: string | undefined } = {},
): Promise<OpenContent> {
  const dir = options.dir ?? contentDir();
  const { files, photos } = await readContentFiles(dir);
  return { dir, files, photos, asOf: chooseDay(files, options.asOf), publishedOn: publicationDay(files) };
}

/** Checks the files of a content folder; problems come back as diagnostics, never as an exception. */
export async function checkContent(content: OpenContent): Promise<LoadedContent> {
  const { dir, files, photos, asOf } = content;
  const keepReadings = await reuseReadings(dir, files);
  const reading = readRecords(files, { asOf, photos });
  await keepReadings();
  const broken = await brokenPhotos(dir, reading.photosToDecode);
  return { ...content, reading: withUndecodable(reading, broken) };
}

/** Reads and checks a content folder. Throws an AsOfError, and nothing else. */
export async function loadContent(options: Parameters<typeof openContent>[0] = {}): Promise<LoadedContent> {
  return checkContent(await openContent(options));
}

/** The content has errors; the message is the whole report. */
class ContentError extends Error {
  override name = 'ContentError';
}

/** The climate of every place, by id. */
async function climatesOf({ places, dailyRecords }: Records): Promise<Map<string, ClimateSummary>> {
  const climates = new Map<string, ClimateSummary>();
  for (const place of places.values()) {
    const figures = figuresOfPlace(place, place.daily === null ? undefined : dailyRecords.get(place.daily));
    climates.set(place.id, await rememberResult('climate', figures, () => climateSummary(figures)));
  }
  return climates;
}

export interface Loaded {
  records: Records;
  catalogue: Catalogue;
}

/** The records of content that was just read, and everything the site shows. Throws a ContentError when the content has errors. */
export async function assembled({ reading, asOf, dir }: LoadedContent): Promise<Loaded> {
  const { records, diagnostics } = reading;
  if (records === null) throw new ContentError(textReport(diagnostics, shownFolder(dir)));
  return { records, catalogue: assemble(records, asOf, await climatesOf(records)) };
}

let loaded: Promise<Loaded> | undefined;

/** Read once in a process: the collections and pages of the site generator must all show the same. */
function loadedOnce(): Promise<Loaded> {
  loaded ??= loadContent().then(assembled);
  return loaded;
}

/** Everything the site shows. Throws a ContentError when the content has errors. */
export async function catalogue(): Promise<Catalogue> {
  return (await loadedOnce()).catalogue;
}

/**
 * The newest changes of the list, and what publishing it adds to what was told. They follow from the records, so they are no part of the
 * catalogue: only the feeds and the page of changes show them.
 */
export function changeHistory({ records, catalogue }: Loaded): ListHistory {
  return listHistory(records, catalogue);
}

/** The records behind the catalogue, for the typed collections. Throws a ContentError when the content has errors. */
export async function records(): Promise<Records> {
  return (await loadedOnce()).records;
}

/**
 * The models beside published figures, and the ripening dates of the yard's species beside dated observations; worked out once for each
 * state of the core and of the species records.
 */
export async function evidenceFor(species: readonly Species[]): Promise<EvidenceTable[]> {
  // Loaded only where it is asked for: the tables hold a good deal of data that the commands have no use for.
  const { evidenceTables } = await import('./core/evidence/evidence.ts');
  const { phenologyTables } = await import('./core/evidence/phenology/tables.ts');
  const { stationNetwork } = await import('./core/climate/anywhere/network.ts');
  const { readStations } = await import('./stations/read.ts');
  const { stationTables } = await import('./core/evidence/stationTables.ts');
  return rememberResult('evidence', species, () => [
    ...phenologyTables(species, stationNetwork(readStations())),
    ...evidenceTables(),
    ...stationTables(readStations()),
  ]);
}

/** The evidence of the yard's species. Throws a ContentError when the content has errors. */
export async function evidence(): Promise<EvidenceTable[]> {
  return evidenceFor([...(await records()).species.values()]);
}
