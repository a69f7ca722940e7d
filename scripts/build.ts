/** `npm run build`: check, build aside, index for search, then swap into place. A failure leaves the site that was there. */

import { mkdir, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contentDir, keepContent, loadContent, shownFolder } from '../src/content.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { textReport } from '../src/core/reading/report.ts';
import {
  checkAddresses,
  keepNewList,
  newList,
  publishList,
  redirectFile,
  refuseLostList,
  serveMovedFiles,
  writeRedirects,
} from '../src/integrations/addressList.ts';
import type { BuildJob } from '../src/integrations/buildJob.ts';
import { buildLog } from '../src/integrations/buildLog.mjs';
import { type FinishedFile, readSite } from '../src/integrations/finishedSite.ts';
import { oneAtATime } from '../src/integrations/oneAtATime.ts';
import { photoProgress } from '../src/integrations/photoProgress.ts';
import { nothingPrinted, type PrintRun, shortAddressesOf } from '../src/integrations/press.ts';
import { privacyScan, refusePrivate } from '../src/integrations/privacyScan.ts';
import { groundHash, keepList, programHash, takeOver } from '../src/integrations/publishedPages.ts';
import { startSearchIndex } from '../src/integrations/searchIndex.ts';
import { clearLeftovers, newBuildingFolder, swapIn } from '../src/integrations/siteFolders.ts';
import { render } from '../src/integrations/siteGenerator.ts';
import { writeSitemap } from '../src/integrations/sitemap.ts';
import { planWork, type Work } from '../src/integrations/workPlan.ts';
import { siteLinks } from '../src/outputs/siteLinks.ts';
import { isReused, plannedKeys } from '../src/pageReuse.ts';
import { clearOldPhotos } from '../src/photos/store.ts';
import { besidePhotos } from '../src/photos.ts';
import { mouldKinds } from '../src/views/mould.ts';
import { photoFiles } from '../src/views/photoFiles.ts';
import { searchRecords } from '../src/views/searchRecords.ts';
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

/** Where the finished site goes: OUT_DIR, else dist/ in the project. */
export function outDir(): string {
  return resolve(root, process.env.OUT_DIR ?? 'dist');
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
  return oneAtATime(join(root, '.build/build.lock'), waiting, () => buildNow(request));
}

/** Reads and checks the content; null when it has errors. Either way the report is printed. */
async function prepare(request: BuildRequest): Promise<BuildJob | null> {
  const content = await loadContent({ asOf: request.asOf });
  const { diagnostics, records } = content.reading;
  if (diagnostics.length > 0) process.stderr.write(`${textReport(diagnostics, shownFolder(content.dir))}\n`);
  if (records === null) {
    process.stderr.write('Nothing was built; the site is as it was.\n');
    return null;
  }
  process.env.AS_OF = content.asOf;
  refuseLostList(content.dir, outDir(), shownFolder(content.dir));
  const catalogue = await keepContent(content);
  const out = outDir();
  await mkdir(dirname(out), { recursive: true });
  await clearLeftovers(out);
  const base = basePath(request.base);
  const program = await programHash(root);
  return {
    root,
    content,
    records,
    catalogue,
    out,
    built: await newBuildingFolder(out),
    base,
    links: siteLinks(catalogue.yard.address, base),
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

/** Looks the built site through, adds what follows from its pages, puts it in place and notes what was published. */
async function publish(job: BuildJob, made: Made, { leaveList = false }: BuildRequest): Promise<number> {
  const { content, records, catalogue, out, built, links, ground } = job;
  const { privateNotes } = content.reading;
  const scan = privacyScan(privateNotes);
  const { fromBeside, reused } = made;
  const redirects = shortAddressesOf(catalogue, fromBeside);
  const finished = readSite(
    built,
    {
      known: [...fromBeside, ...reused],
      redirects: new Set(redirects.map(({ from }) => redirectFile(from))),
    },
    (file, bytes) => refusePrivate(scan, file, bytes),
  );
  await writeSitemap(built, finished.pages, links);
  const addresses = checkAddresses(records.addresses, catalogue, finished.pages, {
    day: { asOf: content.asOf, isPublished: content.asOf === content.publishedOn },
    shownDir: shownFolder(content.dir),
  });
  const moved = serveMovedFiles(built, addresses, finished.files.keys());
  writeRedirects(built, addresses, links, moved);
  const list = newList(content.dir, leaveList ? [] : addresses.news);
  publishList(built, list);
  await swapIn(built, out);
  await clearOldPhotos();
  const keys = new Map([...plannedKeys(), ...fromBeside.map(({ file, key }) => [file, key] as const)]);
  await keepList(out, ground, keys, { files: finished.files, privateNotes });
  await keepNewList(content.dir, list);
  return list?.added ?? 0;
}

async function buildNow(request: BuildRequest): Promise<BuiltSite | null> {
  const job = await prepare(request);
  if (job === null) return null;
  const { catalogue, out, built } = job;
  const { afresh = false } = request;
  const work = await planWork(job, { afresh, onPress: request.press ?? false });
  const { press, carryOver, carried } = work;
  const search = startSearchIndex(searchRecords(catalogue));
  try {
    const reused = await renderAndReuse(job, work, afresh);
    await search.writeInto(built);
    const run = press === null ? nothingPrinted : await press.finished();
    await carryOver?.finished();
    const listed = await publish(job, { fromBeside: [...run.files, ...carried], reused }, request);
    const moulds = press === null ? 0 : mouldKinds.length;
    const rendered = buildLog().pages - moulds + run.files.length - run.reused;
    return { out, rendered, reused: reused.length + run.reused + carried.length, listed, catalogue };
  } catch (problem) {
    press?.stop();
    carryOver?.stop();
    await rm(built, { recursive: true, force: true });
    throw problem;
  } finally {
    await search.stop();
  }
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
