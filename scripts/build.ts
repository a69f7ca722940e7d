/** `npm run build`: check, build aside, index for search, then swap into place. A failure leaves the site that was there. */

import { mkdir, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build as buildSite } from 'astro';
import { contentDir, keepContent, loadContent, shownFolder } from '../src/content.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { textReport } from '../src/core/reading/report.ts';
import { checkAddresses, listNews, writeRedirects } from '../src/integrations/addressList.ts';
import { buildLog } from '../src/integrations/buildLog.mjs';
import { readSite } from '../src/integrations/finishedSite.ts';
import { oneAtATime } from '../src/integrations/oneAtATime.ts';
import { photoProgress } from '../src/integrations/photoProgress.ts';
import { type PrintRun, startPress } from '../src/integrations/press.ts';
import { privacyScan, refusePrivate } from '../src/integrations/privacyScan.ts';
import {
  groundHash,
  keepList,
  publishedPages,
  takeOver,
  untouchedKeys,
} from '../src/integrations/publishedPages.ts';
import { startSearchIndex } from '../src/integrations/searchIndex.ts';
import { clearLeftovers, folderBeside, swapIn } from '../src/integrations/siteFolders.ts';
import { writeSitemap } from '../src/integrations/sitemap.ts';
import { siteLinks } from '../src/outputs/siteLinks.ts';
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
  npm run build -- --press            prints lots and cultivars beside the rest, as is done for large yards anyway
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
  catalogue: Catalogue;
  out: string;
  built: string;
  base: string;
  /** Called whenever a page was begun. */
  onPage: () => void;
}

async function render({ catalogue, out, built, base, onPage }: Rendering): Promise<void> {
  const cache = folderBeside(out, 'cache');
  const log = buildLog();
  log.problems.length = 0;
  log.pages = 0;
  log.onPage = pages => {
    showProgress(pages);
    onPage();
  };
  // A variable of this name, as some shells and test runners set it, would win over the base path in every link.
  delete process.env.BASE_URL;
  await buildSite({
    root,
    site: catalogue.yard.address,
    base,
    outDir: built,
    // A cache from an earlier build could publish old content, so each build starts from none.
    cacheDir: cache,
    mode: 'production',
  }).finally(() => rm(cache, { recursive: true, force: true }));
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
  /** Prints pages of lots and cultivars on the press, however few there are. */
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

async function buildNow(request: BuildRequest): Promise<BuiltSite | null> {
  const content = await loadContent({ asOf: request.asOf });
  const report = textReport(content.reading.diagnostics, shownFolder(content.dir));
  if (content.reading.diagnostics.length > 0) process.stderr.write(`${report}\n`);
  if (content.reading.records === null) {
    process.stderr.write('Nothing was built; the site is as it was.\n');
    return null;
  }
  process.env.AS_OF = content.asOf;
  const catalogue = await keepContent(content);
  const out = outDir();
  await mkdir(dirname(out), { recursive: true });
  await clearLeftovers(out);
  const base = basePath(request.base);
  const links = siteLinks(catalogue.yard.address, base);
  const ground = await groundHash({ root, content: content.dir, base, catalogue });
  const built = folderBeside(out, 'building');
  const printed = new Set(printedFiles(catalogue, request.press ? 1 : undefined).map(({ file }) => file));
  const published = request.afresh ? new Map<string, never>() : await publishedPages(out, ground);
  planPages(
    ground,
    untouchedKeys(out, published, file => !printed.has(file)),
    printed,
  );
  const { privateNotes } = content.reading;
  const order = { all: catalogue, built, out, base, ground, afresh: request.afresh === true, privateNotes };
  const press = printed.size > 0 ? startPress(order) : null;
  const search = startSearchIndex(searchRecords(catalogue));
  let reused = 0;
  let listed = 0;
  let run: PrintRun = { files: [], redirects: [], reused: 0 };
  try {
    const rendering = { catalogue, out, built, base, onPage: () => press?.offerMoulds() };
    await besidePhotos(photoFiles(catalogue), photoProgress(), () => render(rendering));
    for (const file of plannedKeys().keys()) {
      if (!isReused(file)) continue;
      takeOver(out, built, file);
      reused += 1;
    }
    await search.writeInto(built);
    if (press) run = await press.finished();
    const scan = privacyScan(privateNotes);
    const redirects = new Set(run.redirects);
    const finished = readSite(built, { known: run.files, redirects }, (file, bytes) =>
      refusePrivate(scan, file, bytes),
    );
    await writeSitemap(built, finished.pages, links);
    const addresses = checkAddresses(
      content.reading.records.addresses,
      catalogue,
      finished.pages,
      shownFolder(content.dir),
    );
    writeRedirects(built, addresses, links, redirects);
    await swapIn(built, out);
    await clearOldPhotos();
    const keys = new Map([...plannedKeys(), ...run.files.map(({ file, key }) => [file, key] as const)]);
    await keepList(out, ground, keys, finished.bytes);
    listed = request.leaveList ? 0 : await listNews(content.dir, addresses);
  } catch (problem) {
    press?.stop();
    await rm(built, { recursive: true, force: true });
    throw problem;
  } finally {
    await search.stop();
  }
  const moulds = press ? mouldKinds.length : 0;
  const renderedNow = buildLog().pages - moulds + run.files.length - run.reused;
  return { out, rendered: renderedNow, reused: reused + run.reused, listed, catalogue };
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
