/** The steps of a build: check, plan, make, look through, swap into place. A failure leaves the site that was there. */

import { mkdir } from 'node:fs/promises';
import { homedir, tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  assembled,
  changeHistory,
  contentDir,
  type LoadedContent,
  loadContent,
  shownFolder,
} from '../content.ts';
import { privateDir } from '../contentFolder.ts';
import type { Catalogue } from '../core/catalogue.ts';
import type { ListHistory } from '../core/history/history.ts';
import { changesFile } from '../core/reading/changeFile.ts';
import { textReport } from '../core/reading/report.ts';
import type { Records } from '../core/records/records.ts';
import type { FileAside } from '../files.ts';
import { clearOldPhotos } from '../photos/store.ts';
import { publishedPhotos } from '../photos.ts';
import { takeKeptSince } from '../resultStore.ts';
import { searchRecords } from '../site/data/searchRecords.ts';
import { photoFiles } from '../site/parts/photoFiles.ts';
import { routesOf } from '../site/routes.ts';
import { linksOf, type Site } from '../site/site.ts';
import { townFiles } from '../towns/townFiles.ts';
import { wantedTowns } from '../towns/wanted.ts';
import {
  checkAddresses,
  listPath,
  type NewList,
  newList,
  publishList,
  serveMovedFiles,
  writeNewList,
  writeRedirects,
} from './addressList.ts';
import { allEnded } from './allEnded.ts';
import { bundle } from './assets.ts';
import { type NewLog, newLog, publishLog, writeNewLog } from './changeLog.ts';
import { type FinishedFile, readSite } from './finishedSite.ts';
import { isDiskFull } from './fullDisk.ts';
import { globalInputsOf, lastBuild, linkFiles, noLastBuild, programHash, writeList } from './lastBuild.ts';
import { clearLeftAside } from './leftAside.ts';
import { refuseLostFiles } from './lostFiles.ts';
import { oneAtATime } from './oneAtATime.ts';
import { assertReplaceable, assertWritable, followed, outputFolder } from './outputFolder.ts';
import { addOwnPages } from './ownPages.ts';
import { photoProgress } from './photoProgress.ts';
import { type Plan, planOf } from './plan.ts';
import { makeAll } from './pool.ts';
import { privacyScan, refusePrivate, type Secrets } from './privacyScan.ts';
import { publicFiles } from './publicFiles.ts';
import { startSearchIndex } from './searchIndex.ts';
import { clearLeftovers, folderBeside, newBuildingFolder, swapIn } from './siteFolders.ts';
import { removeSite, type SiteMark } from './siteMark.ts';
import { writeSitemap } from './sitemap.ts';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** The folder of the project that is there for sites. */
const ownFolder = join(root, 'dist');

/** Where the finished site goes: OUT_DIR, else dist/ in the project. Throws an OutputError for a place where a site would destroy something else. */
export function outDir(): string {
  const asked = resolve(root, process.env.OUT_DIR || ownFolder);
  return outputFolder(asked, { root, content: [contentDir(), privateDir(contentDir())], home: homedir() });
}

export interface BuildRequest {
  /** A day other than the usual one, YYYY-MM-DD. */
  asOf?: string | undefined;
  /** Path below which the site lives, with a slash at both ends. */
  base: string;
  /** Makes everything, also what shows nothing new. */
  afresh?: boolean | undefined;
  /** Leaves content/addresses.csv as it is: for a build that is only looked at. */
  leaveList?: boolean | undefined;
}

export interface BuiltSite {
  out: string;
  /** Files that were made. */
  made: number;
  /** Files taken from the site before. */
  unchanged: number;
  /** Addresses that were added to the list of the published ones. */
  listed: number;
  catalogue: Catalogue;
}

/** What the steps of one build share. */
interface BuildJob {
  request: BuildRequest;
  content: LoadedContent;
  records: Records;
  history: ListHistory;
  site: Site;
  /** Where the site goes, and where it is built until then. */
  out: string;
  built: string;
  /** What must not be published. */
  secrets: Secrets;
  /** Hash of the program and its packages. */
  program: string;
  /** Hash of what every file depends on. */
  globalInputs: string;
}

/**
 * Builds the site of CONTENT_DIR into OUT_DIR. Returns null when the content has errors, after printing the report;
 * throws when a later step fails. Either way the output folder is as it was.
 */
export async function build(request: BuildRequest): Promise<BuiltSite | null> {
  const waiting = () => process.stderr.write('Another build is under way; waiting for it ...\n');
  const out = outDir();
  try {
    return await oneAtATime(join(root, '.build/build.lock'), waiting, async () => {
      // First of all: where the power went in the middle of a swap, the site that was there comes back, whatever becomes of this build.
      clearLeftovers(out);
      for (const path of [listPath(contentDir()), join(contentDir(), changesFile)])
        await clearLeftAside(path);
      takeKeptSince(request.afresh ? Date.now() : 0);
      return buildNow(request, out);
    });
  } catch (problem) {
    throw isDiskFull(problem) ? fullDisk(problem) : problem;
  }
}

function markOf({ yard: { name, address } }: Catalogue): SiteMark {
  return { yard: name, address };
}

/** Throws an OutputError unless a folder may be replaced by this yard's site. */
function assertOurs(out: string, catalogue: Catalogue): void {
  assertReplaceable(out, markOf(catalogue), out === followed(ownFolder));
}

/** Reads and checks the content; null when it has errors. Either way the report is printed. */
async function prepare(request: BuildRequest, out: string): Promise<BuildJob | null> {
  const { base, afresh = false } = request;
  const content = await loadContent({ asOf: request.asOf });
  const { diagnostics, privateNotes: notes } = content.reading;
  const shownContent = shownFolder(content.dir);
  if (diagnostics.length > 0) process.stderr.write(`${textReport(diagnostics, shownContent)}\n`);
  if (content.reading.records === null) {
    process.stderr.write('Nothing was built; the site is as it was.\n');
    return null;
  }
  const loaded = await assembled(content);
  const { records, catalogue: all } = loaded;
  refuseLostFiles({ content: content.dir, out, shownDir: shownContent }, markOf(all));
  assertOurs(out, all);
  await mkdir(dirname(out), { recursive: true });
  assertWritable(out);
  const program = await programHash(root);
  const { assets, files } = await bundle({ root, program, base, afresh });
  const photos = await publishedPhotos(photoFiles(all), photoProgress());
  const history = changeHistory(loaded);
  const towns = await townFiles(wantedTowns(all), count =>
    console.error(
      `Working out the climate of ${count.toLocaleString('en')} towns: the better part of a minute, this once.`,
    ),
  );
  const copied = [...files, ...(await publicFiles(root)), ...towns];
  const site: Site = { all, changes: history.events, photos, assets, copied, base };
  return {
    request,
    content,
    records,
    history,
    site,
    out,
    built: folderBeside(out, 'building'),
    secrets: { notes, content: content.dir, shownContent },
    program,
    globalInputs: globalInputsOf(program, site),
  };
}

/** A site that has been looked through, with what is written about it once it is in place. */
interface Finished {
  /** The list of addresses. */
  list: NewList | null;
  /** The log of changes. */
  log: NewLog | null;
  /** What is known of the files, for the next build. */
  kept: FileAside;
}

/** Looks the built site through and adds what follows from its pages. */
async function finish(job: BuildJob, known: readonly FinishedFile[], { digests }: Plan): Promise<Finished> {
  const { request, content, records, history, site, out, built, secrets, globalInputs } = job;
  const { all } = site;
  const links = linksOf(site);
  const scan = privacyScan(secrets, all);
  const { files, pages } = readSite(built, known, (file, bytes) => refusePrivate(scan, secrets, file, bytes));
  await writeSitemap(built, pages, links);
  const isPublished = content.asOf === content.publishedOn;
  const addresses = checkAddresses(records.addresses, all, pages, {
    day: { asOf: content.asOf, isPublished },
    shownDir: secrets.shownContent,
  });
  const moved = serveMovedFiles(built, addresses, files.keys());
  writeRedirects(built, addresses, links, { files, moved });
  const list = newList(content.dir, request.leaveList ? [] : addresses.news);
  publishList(built, list);
  const log = newLog(content.dir, isPublished && !request.leaveList ? history.lines : []);
  publishLog(built, log);
  return { list, log, kept: await writeList(out, globalInputs, digests, { files, notes: secrets.notes }) };
}

/**
 * Puts a finished site in place and notes what was published. All that needs room on the disk is written before, so that afterwards nothing
 * but renaming is left to do. Returns how many addresses were listed.
 */
async function publish(
  { content, site, out, built }: BuildJob,
  { list, log, kept }: Finished,
): Promise<number> {
  const written = [kept];
  try {
    const addresses = await writeNewList(content.dir, list);
    if (addresses !== null) written.unshift(addresses);
    const changes = await writeNewLog(content.dir, log);
    if (changes !== null) written.unshift(changes);
    // Whatever came to lie there during the build.
    assertOurs(out, site.all);
    await swapIn(built, out);
    for (const file of written) await file.put();
  } finally {
    for (const file of written) await file.drop();
  }
  await clearOldPhotos();
  return list?.added ?? 0;
}

/** Makes what has changed and takes what has not; what there is to know of all these files. */
async function fill(job: BuildJob, search: ReturnType<typeof startSearchIndex>) {
  const { request, site, out, built, secrets, globalInputs } = job;
  const routes = routesOf(site);
  const scan = privacyScan(secrets, site.all);
  const before = request.afresh
    ? noLastBuild
    : await lastBuild(out, globalInputs, { notes: secrets.notes, scan });
  const plan = planOf(routes, before);
  const [linked, made] = await allEnded([
    linkFiles(out, built, plan.unchanged),
    makeAll({ site, built, secrets }, routes, plan.changed),
  ]);
  await addOwnPages({ root, built, address: site.all.yard.address, base: site.base, asOf: job.content.asOf });
  await search.writeInto(built);
  return { plan, linked, made };
}

async function buildNow(request: BuildRequest, out: string): Promise<BuiltSite | null> {
  const job = await prepare(request, out);
  if (job === null) return null;
  const { site, built, program } = job;
  let search: ReturnType<typeof startSearchIndex> | null = null;
  try {
    await newBuildingFolder(out, markOf(site.all));
    search = startSearchIndex({ records: searchRecords(site.all), out, program });
    const { plan, linked, made } = await fill(job, search);
    const finished = await finish(job, [...linked, ...made], plan);
    const listed = await publish(job, finished);
    await search.stop();
    return { out, made: made.length, unchanged: linked.length, listed, catalogue: site.all };
  } catch (problem) {
    // Asked before anything is removed.
    const isFull = isDiskFull(problem, [dirname(out), root, tmpdir()]);
    await search?.stop();
    removeSite(built);
    throw isFull ? fullDisk(problem) : problem;
  }
}

function fullDisk(cause: unknown): Error {
  return new Error(
    'the disk is full, so nothing was published and the site is as it was. Make room, and build again.',
    {
      cause,
    },
  );
}
