/** `npm run build`: check, build aside, index for search, then swap into place. A failure leaves the site that was there. */

import { mkdir } from 'node:fs/promises';
import { homedir, tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { changeHistory, contentDir, keepContent, loadContent, shownFolder } from '../src/content.ts';
import { privateDir } from '../src/contentFolder.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { changesFile } from '../src/core/reading/changeFile.ts';
import { textReport } from '../src/core/reading/report.ts';
import type { ChangeLine } from '../src/core/records/change.ts';
import type { FileAside } from '../src/files.ts';
import {
  checkAddresses,
  listPath,
  type NewList,
  newList,
  publishList,
  redirectFile,
  refuseLostList,
  serveMovedFiles,
  writeNewList,
  writeRedirects,
} from '../src/integrations/addressList.ts';
import type { BuildJob } from '../src/integrations/buildJob.ts';
import { buildLog } from '../src/integrations/buildLog.mjs';
import type { CarryOver } from '../src/integrations/carryOver.ts';
import { writeChanges } from '../src/integrations/changeLog.ts';
import { type FinishedFile, readSite } from '../src/integrations/finishedSite.ts';
import { isDiskFull } from '../src/integrations/fullDisk.ts';
import { clearLeftAside } from '../src/integrations/leftAside.ts';
import { oneAtATime } from '../src/integrations/oneAtATime.ts';
import {
  assertReplaceable,
  assertWritable,
  followed,
  outputFolder,
} from '../src/integrations/outputFolder.ts';
import { photoProgress } from '../src/integrations/photoProgress.ts';
import { nothingPrinted, type Press, type PrintRun, shortAddressesOf } from '../src/integrations/press.ts';
import { privacyScan, refusePrivate, type Secrets } from '../src/integrations/privacyScan.ts';
import { groundHash, keepList, programHash, takeOver } from '../src/integrations/publishedPages.ts';
import { startSearchIndex } from '../src/integrations/searchIndex.ts';
import { clearLeftovers, folderBeside, newBuildingFolder, swapIn } from '../src/integrations/siteFolders.ts';
import { render } from '../src/integrations/siteGenerator.ts';
import { removeSite, type SiteMark } from '../src/integrations/siteMark.ts';
import { writeSitemap } from '../src/integrations/sitemap.ts';
import { planWork, type Work } from '../src/integrations/workPlan.ts';
import { siteLinks } from '../src/outputs/siteLinks.ts';
import { isReused, plannedKeys } from '../src/pageReuse.ts';
import { clearOldPhotos } from '../src/photos/store.ts';
import { besidePhotos } from '../src/photos.ts';
import { takeKept } from '../src/resultStore.ts';
import { searchRecords } from '../src/site/data/searchRecords.ts';
import { photoFiles } from '../src/site/parts/photoFiles.ts';
import { mouldKinds } from '../src/views/mould.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const help = `Builds the site from content/ into dist/.

  npm run build                       for today in the yard's time zone
  npm run build -- --as-of 2026-11-25 a look at another day; new addresses are not listed
  npm run build -- --base /orchard/   for a site that lives below a path
  npm run build -- --afresh           makes everything anew, also what has not changed
  npm run build -- --press            prints lots, cultivars and guides beside the rest, as is done for large yards anyway
  npm run build -- --leave-list       does not add new addresses to content/addresses.csv: for a site only looked at

CONTENT_DIR and OUT_DIR name other folders; BASE_PATH does what --base does.
`;

/** The folder of the project that is there for sites. */
const ownFolder = join(root, 'dist');

/** Where the finished site goes: OUT_DIR, else dist/ in the project. Throws an OutputError for a place where a site would destroy something else. */
export function outDir(): string {
  const asked = resolve(root, process.env.OUT_DIR || ownFolder);
  return outputFolder(asked, { root, content: [contentDir(), privateDir(contentDir())], home: homedir() });
}

/** A base path as the site generator wants it: one slash at both ends. Throws a UsageError on anything but a plain path. */
export function basePath(given: string | undefined): string {
  const asked = given ?? process.env.BASE_PATH ?? '/';
  const path = `/${asked.replace(/^\/+|\/+$/g, '')}/`.replace(/^\/\/$/, '/');
  if (!/^\/(?:[\w.-]+\/)*$/.test(path))
    throw new UsageError(`"${asked}" is no base path; write it as /orchard/.`);
  return path;
}

export interface BuildRequest {
  /** A day other than the usual one, YYYY-MM-DD. */
  asOf?: string | undefined;
  /** Path below which the site lives. */
  base?: string | undefined;
  /** Renders every page, also those that show nothing new. */
  afresh?: boolean | undefined;
  /** Leaves content/addresses.csv as it is: for a build that is only looked at. */
  leaveList?: boolean | undefined;
  /** Prints lots, cultivars and guides on the press, however few there are. */
  press?: boolean | undefined;
}

export interface BuiltSite {
  out: string;
  /** Files the generator wrote. */
  rendered: number;
  /** Files taken from the site before. */
  reused: number;
  /** Addresses that were added to the list of the published ones. */
  listed: number;
  catalogue: Catalogue;
}

/**
 * Builds the site of CONTENT_DIR into OUT_DIR. Returns null when the content has errors, after printing the report;
 * throws when a later step fails. Either way the output folder is as it was.
 */
export async function build(request: BuildRequest = {}): Promise<BuiltSite | null> {
  const waiting = () => process.stderr.write('Another build is under way; waiting for it ...\n');
  const out = outDir();
  try {
    return await oneAtATime(join(root, '.build/build.lock'), waiting, async () => {
      // First of all: where the power went in the middle of a swap, the site that was there comes back, whatever becomes of this build.
      clearLeftovers(out);
      for (const path of [listPath(contentDir()), join(contentDir(), changesFile)])
        await clearLeftAside(path);
      takeKept(!request.afresh);
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
  const content = await loadContent({ asOf: request.asOf });
  const { diagnostics, records } = content.reading;
  if (diagnostics.length > 0) process.stderr.write(`${textReport(diagnostics, shownFolder(content.dir))}\n`);
  if (records === null) {
    process.stderr.write('Nothing was built; the site is as it was.\n');
    return null;
  }
  process.env.AS_OF = content.asOf;
  refuseLostList(content.dir, out, shownFolder(content.dir));
  const catalogue = await keepContent(content);
  assertOurs(out, catalogue);
  await mkdir(dirname(out), { recursive: true });
  assertWritable(out);
  const base = basePath(request.base);
  const program = await programHash(root);
  const secrets: Secrets = {
    notes: content.reading.privateNotes,
    content: content.dir,
    shownContent: shownFolder(content.dir),
  };
  return {
    root,
    content,
    records,
    catalogue,
    out,
    built: folderBeside(out, 'building'),
    base,
    links: siteLinks(catalogue.yard.address, base),
    secrets,
    scan: privacyScan(secrets, catalogue),
    program,
    ground: await groundHash({ program, content: content.dir, base, catalogue }),
  };
}

/** Renders the pages the generator has to render, and takes those that are unchanged; returns these. */
async function renderAndReuse(
  job: BuildJob,
  { press, standing }: Work,
  afresh: boolean,
): Promise<FinishedFile[]> {
  const { catalogue, out, built } = job;
  const onPage = () => press?.offerMoulds();
  await besidePhotos(photoFiles(catalogue), photoProgress(), () => render({ job, afresh, onPage }));
  const reused = [...standing.values()].filter(({ file }) => isReused(file));
  for (const { file } of reused) takeOver(out, built, file);
  return reused;
}

/** What is known of the new site before it is looked through. */
interface Made {
  /** Printed or carried over beside the generator. */
  fromBeside: PrintRun['files'];
  /** Taken from the site before, once the generator knew what they show. */
  reused: readonly FinishedFile[];
}

/** A site that has been looked through, with what is written about it once it is in place. */
interface Finished {
  /** The list of addresses. */
  list: NewList | null;
  /** What was told of the list of lots for the first time. */
  changes: readonly ChangeLine[];
  /** What is known of the pages, for the next build. */
  kept: FileAside;
}

/** Looks the built site through and adds what follows from its pages. */
async function finish(
  job: BuildJob,
  { fromBeside, reused }: Made,
  { leaveList = false }: BuildRequest,
): Promise<Finished> {
  const { content, records, catalogue, out, built, links, ground, secrets, scan } = job;
  const redirects = shortAddressesOf(catalogue, fromBeside);
  const { files, pages } = readSite(
    built,
    {
      known: [...fromBeside, ...reused],
      redirects: new Set(redirects.map(({ from }) => redirectFile(from))),
    },
    (file, bytes) => refusePrivate(scan, secrets, file, bytes),
  );
  await writeSitemap(built, pages, links);
  const isPublished = content.asOf === content.publishedOn;
  const addresses = checkAddresses(records.addresses, catalogue, pages, {
    day: { asOf: content.asOf, isPublished },
    shownDir: shownFolder(content.dir),
  });
  const moved = serveMovedFiles(built, addresses, files.keys());
  writeRedirects(built, addresses, links, moved);
  const list = newList(content.dir, leaveList ? [] : addresses.news);
  publishList(built, list);
  const keys = new Map([...plannedKeys(), ...fromBeside.map(({ file, key }) => [file, key] as const)]);
  const changes = isPublished && !leaveList ? (await changeHistory()).lines : [];
  return { list, changes, kept: await keepList(out, ground, keys, { files, notes: secrets.notes }) };
}

/**
 * Puts a finished site in place and notes what was published. All that needs room on the disk is written before, so that afterwards nothing
 * but renaming is left to do. Returns how many addresses were listed.
 */
async function publish(
  { content, catalogue, out, built }: BuildJob,
  { list, changes, kept }: Finished,
): Promise<number> {
  const written = [kept];
  try {
    const addresses = await writeNewList(content.dir, list);
    if (addresses !== null) written.unshift(addresses);
    const log = await writeChanges(content.dir, changes);
    if (log !== null) written.unshift(log);
    // Whatever came to lie there during the build.
    assertOurs(out, catalogue);
    await swapIn(built, out);
    for (const file of written) await file.put();
  } finally {
    for (const file of written) await file.drop();
  }
  await clearOldPhotos();
  return list?.added ?? 0;
}

/** What is under way beside the generator. */
interface Beside {
  press: Press | null;
  carryOver: CarryOver | null;
  search: ReturnType<typeof startSearchIndex>;
}

/** Ends what is under way, and removes what was built, once nobody writes into it any more. */
async function giveUp(built: string, beside: Beside | null): Promise<void> {
  await Promise.all([beside?.press?.stop(), beside?.carryOver?.stop(), beside?.search.stop()]);
  removeSite(built);
}

async function buildNow(request: BuildRequest, out: string): Promise<BuiltSite | null> {
  const job = await prepare(request, out);
  if (job === null) return null;
  const { catalogue, built } = job;
  const { afresh = false } = request;
  let beside: Beside | null = null;
  try {
    await newBuildingFolder(out, markOf(catalogue));
    const work = await planWork(job, { afresh, onPress: request.press ?? false });
    const { press, carryOver, carried } = work;
    beside = { press, carryOver, search: startSearchIndex(searchRecords(catalogue)) };
    const reused = await renderAndReuse(job, work, afresh);
    await beside.search.writeInto(built);
    const run = press === null ? nothingPrinted : await press.finished();
    await carryOver?.finished();
    const finished = await finish(job, { fromBeside: [...run.files, ...carried], reused }, request);
    const listed = await publish(job, finished);
    await beside.search.stop();
    const moulds = press === null ? 0 : mouldKinds.length;
    const rendered = buildLog().pages - moulds + run.files.length - run.reused;
    return { out, rendered, reused: reused.length + run.reused + carried.length, listed, catalogue };
  } catch (problem) {
    // Asked before anything is removed.
    const isFull = isDiskFull(problem, [dirname(out), root, tmpdir()]);
    await giveUp(built, beside);
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

export async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, {
    'as-of': { type: 'string' },
    base: { type: 'string' },
    afresh: { type: 'boolean' },
    press: { type: 'boolean' },
    'leave-list': { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (values.help) {
    process.stdout.write(help);
    return 0;
  }
  const site = await build({
    asOf: values['as-of'],
    base: values.base,
    afresh: values.afresh,
    press: values.press,
    leaveList: values['leave-list'],
  });
  if (site === null) return 1;
  const kept = site.reused > 0 ? `, ${site.reused} unchanged ones kept` : '';
  process.stdout.write(`Built ${site.rendered} pages${kept}, for ${site.catalogue.asOf}, into ${site.out}\n`);
  if (site.listed > 0) {
    const count = `${site.listed} new ${site.listed === 1 ? 'address' : 'addresses'}`;
    process.stdout.write(
      `Listed ${count} in ${join(shownFolder(contentDir()), 'addresses.csv')}; commit it with the rest.\n`,
    );
  }
  return 0;
}

await runIfMain(import.meta, main);
