/** `npm run build`: check, build aside, index for search, then swap into place. A failure leaves the site that was there. */

import { mkdir, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build as buildSite } from 'astro';
import { contentDir, keepContent, type LoadedContent, loadContent, shownFolder } from '../src/content.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { textReport } from '../src/core/reading/report.ts';
import type { Records } from '../src/core/records/records.ts';
import {
  checkAddresses,
  listNews,
  redirectFile,
  serveMovedFiles,
  writeRedirects,
} from '../src/integrations/addressList.ts';
import { buildLog } from '../src/integrations/buildLog.mjs';
import { readSite } from '../src/integrations/finishedSite.ts';
import { generatorKeeper, generatorKey, keptGenerator } from '../src/integrations/keptGenerator.ts';
import { renderKept } from '../src/integrations/keptRendering.ts';
import { oneAtATime } from '../src/integrations/oneAtATime.ts';
import { photoProgress } from '../src/integrations/photoProgress.ts';
import {
  nothingPrinted,
  type Press,
  type PrintRun,
  shortAddressOf,
  startPress,
} from '../src/integrations/press.ts';
import { privacyScan, refusePrivate } from '../src/integrations/privacyScan.ts';
import {
  groundHash,
  keepList,
  programHash,
  publishedPages,
  takeOver,
  untouchedKeys,
} from '../src/integrations/publishedPages.ts';
import { startSearchIndex } from '../src/integrations/searchIndex.ts';
import { clearLeftovers, folderBeside, swapIn } from '../src/integrations/siteFolders.ts';
import { writeSitemap } from '../src/integrations/sitemap.ts';
import { type SiteLinks, siteLinks } from '../src/outputs/siteLinks.ts';
import { isReused, plannedKeys, planPages } from '../src/pageReuse.ts';
import { clearOldPhotos } from '../src/photos/store.ts';
import { besidePhotos } from '../src/photos.ts';
import { mouldKinds } from '../src/views/mould.ts';
import { photoFiles } from '../src/views/photoFiles.ts';
import { printedFiles } from '../src/views/printed.ts';
import { searchRecords } from '../src/views/searchRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const help = `Builds the site from content/ into dist/.

  npm run build                       for today in the yard's time zone
  npm run build -- --as-of 2026-11-25 for another day
  npm run build -- --base /orchard/   for a site that lives below a path
  npm run build -- --afresh           renders every page, also those that show nothing new
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

/** Says now and then how far a long build has come. */
function showProgress(pages: number): void {
  const everyPages = 500;
  if (pages % everyPages === 0) process.stderr.write(`  ${pages} pages ...\n`);
}

interface Rendering {
  job: Job;
  /** Compiles the program again, also where what was compiled of it is kept. */
  afresh: boolean;
  /** Called whenever a page was begun. */
  onPage: () => void;
}

/** Compiles the program and renders its pages; what was compiled is kept for the next build. */
async function compileAndRender({ catalogue, out, built, base }: Job, key: string): Promise<void> {
  const cache = folderBeside(out, 'cache');
  const keeper = generatorKeeper(built);
  // A variable of this name, as some shells and test runners set it, would win over the base path in every link.
  delete process.env.BASE_URL;
  await buildSite({
    root,
    site: catalogue.yard.address,
    base,
    outDir: built,
    // A cache of the generator's own could publish old content, so each build starts from none.
    cacheDir: cache,
    mode: 'production',
    integrations: [keeper.integration],
  }).finally(() => rm(cache, { recursive: true, force: true }));
  if (buildLog().problems.length === 0) await keeper.keep(key);
}

async function render({ job, afresh, onPage }: Rendering): Promise<void> {
  const { catalogue, built, base, program } = job;
  const log = buildLog();
  log.problems.length = 0;
  log.pages = 0;
  log.onPage = pages => {
    showProgress(pages);
    onPage();
  };
  const { address } = catalogue.yard;
  const key = generatorKey(program, address, base);
  const kept = afresh ? null : await keptGenerator(key);
  if (kept === null) await compileAndRender(job, key);
  else await renderKept(kept, { address, base, built });
  if (log.problems.length > 0) throw new Error(`the site was not built: ${log.problems[0]}`);
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

/** Everything the steps of one build share. */
interface Job {
  content: LoadedContent;
  records: Records;
  catalogue: Catalogue;
  /** Where the site goes, and where it is built until then. */
  out: string;
  built: string;
  base: string;
  links: SiteLinks;
  /** Hash of the program. */
  program: string;
  /** Hash of what every page rests on. */
  ground: string;
}

/** Reads and checks the content; null when it has errors. Either way the report is printed. */
async function prepare(request: BuildRequest): Promise<Job | null> {
  const content = await loadContent({ asOf: request.asOf });
  const { diagnostics, records } = content.reading;
  if (diagnostics.length > 0) process.stderr.write(`${textReport(diagnostics, shownFolder(content.dir))}\n`);
  if (records === null) {
    process.stderr.write('Nothing was built; the site is as it was.\n');
    return null;
  }
  process.env.AS_OF = content.asOf;
  const catalogue = await keepContent(content);
  const out = outDir();
  await mkdir(dirname(out), { recursive: true });
  await clearLeftovers(out);
  const base = basePath(request.base);
  const program = await programHash(root);
  return {
    content,
    records,
    catalogue,
    out,
    built: folderBeside(out, 'building'),
    base,
    links: siteLinks(catalogue.yard.address, base),
    program,
    ground: await groundHash({ program, content: content.dir, base, catalogue }),
  };
}

/** Decides which pages the generator renders, which are those of the site before, and which the press prints; starts the press. */
async function planWork(job: Job, { afresh = false, press = false }: BuildRequest): Promise<Press | null> {
  const { content, catalogue, out, built, base, ground } = job;
  const files = printedFiles(catalogue, press ? 1 : undefined);
  const printed = new Set(files.map(({ file }) => file));
  const published = afresh ? new Map<string, never>() : await publishedPages(out, ground);
  const isRendered = (file: string) => !printed.has(file);
  planPages(ground, untouchedKeys(out, published, isRendered), printed);
  if (printed.size === 0) return null;
  const { privateNotes } = content.reading;
  return startPress({ all: catalogue, built, out, base, ground, afresh, privateNotes }, files);
}

/** Renders the pages the generator has to render, and takes those that are unchanged; returns how many of these there were. */
async function renderAndReuse(job: Job, press: Press | null, afresh = false): Promise<number> {
  const { catalogue, out, built } = job;
  const onPage = () => press?.offerMoulds();
  await besidePhotos(photoFiles(catalogue), photoProgress(), () => render({ job, afresh, onPage }));
  const reused = [...plannedKeys().keys()].filter(isReused);
  for (const file of reused) takeOver(out, built, file);
  return reused.length;
}

/** Looks the built site through, adds what follows from its pages, puts it in place and notes what was published. */
async function publish(job: Job, run: PrintRun, { leaveList = false }: BuildRequest): Promise<number> {
  const { content, records, catalogue, out, built, links, ground } = job;
  const scan = privacyScan(content.reading.privateNotes);
  const redirects = run.files.flatMap(({ file }) => shortAddressOf(catalogue, file) ?? []);
  const finished = readSite(
    built,
    { known: run.files, redirects: new Set(redirects.map(({ from }) => redirectFile(from))) },
    (file, bytes) => refusePrivate(scan, file, bytes),
  );
  await writeSitemap(built, finished.pages, links);
  const addresses = checkAddresses(records.addresses, catalogue, finished.pages, shownFolder(content.dir));
  const moved = serveMovedFiles(built, addresses, finished.bytes.keys());
  writeRedirects(built, addresses, links, moved);
  await swapIn(built, out);
  await clearOldPhotos();
  const keys = new Map([...plannedKeys(), ...run.files.map(({ file, key }) => [file, key] as const)]);
  await keepList(out, ground, keys, finished.bytes);
  return leaveList ? 0 : listNews(content.dir, addresses);
}

async function buildNow(request: BuildRequest): Promise<BuiltSite | null> {
  const job = await prepare(request);
  if (job === null) return null;
  const { catalogue, out, built } = job;
  const press = await planWork(job, request);
  const search = startSearchIndex(searchRecords(catalogue));
  try {
    const reused = await renderAndReuse(job, press, request.afresh);
    await search.writeInto(built);
    const run = press === null ? nothingPrinted : await press.finished();
    const listed = await publish(job, run, request);
    const moulds = press === null ? 0 : mouldKinds.length;
    const rendered = buildLog().pages - moulds + run.files.length - run.reused;
    return { out, rendered, reused: reused + run.reused, listed, catalogue };
  } catch (problem) {
    press?.stop();
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
