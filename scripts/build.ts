/** `npm run build`: check, build aside, index for search, then swap into place. A failure leaves the site that was there. */

import { mkdir, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build as buildSite } from 'astro';
import { keepContent, loadContent, shownFolder } from '../src/content.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { textReport } from '../src/core/reading/report.ts';
import { buildLog } from '../src/integrations/buildLog.mjs';
import { searchIndex } from '../src/integrations/searchIndex.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { isRunning, oneAtATime } from './oneAtATime.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const help = `Builds the site from content/ into dist/.

  npm run build                       for today in the yard's time zone
  npm run build -- --as-of 2026-11-25 for another day
  npm run build -- --base /orchard/   for a site that lives below a path

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

/** Folder beside the output in which this process builds; on the same disk, so that the swap is a rename. */
function asideOf(out: string, what: 'building' | 'old' | 'cache'): string {
  return join(dirname(out), `.${basename(out)}-${what}-${process.pid}`);
}

/** Removes what builds that were killed have left beside the output. */
async function clearLeftovers(out: string): Promise<void> {
  const pattern = new RegExp(
    `^\\.${basename(out).replace(/[^\w-]/g, '\\$&')}-(?:building|old|cache)-(\\d+)$`,
  );
  for (const name of await readdir(dirname(out))) {
    const pid = pattern.exec(name)?.[1];
    if (pid !== undefined && !isRunning(Number(pid))) {
      await rm(join(dirname(out), name), { recursive: true, force: true });
    }
  }
}

/** Puts the finished folder in the place of the one that was there. */
async function swap(built: string, out: string): Promise<void> {
  const old = asideOf(out, 'old');
  await rm(old, { recursive: true, force: true });
  const before = await stat(out).catch(() => null);
  if (before) await rename(out, old);
  await rename(built, out);
  await rm(old, { recursive: true, force: true });
}

/** Says now and then how far a long build has come. */
function showProgress(): void {
  const everyPages = 500;
  buildLog().onPage = pages => {
    if (pages % everyPages === 0) process.stderr.write(`  ${pages} pages ...\n`);
  };
}

async function render(catalogue: Catalogue, out: string, built: string, base: string): Promise<void> {
  const cache = asideOf(out, 'cache');
  const log = buildLog();
  log.problems.length = 0;
  log.pages = 0;
  showProgress();
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
}

export interface BuiltSite {
  out: string;
  pages: number;
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
  const built = asideOf(out, 'building');
  await mkdir(dirname(out), { recursive: true });
  await clearLeftovers(out);
  try {
    await render(catalogue, out, built, basePath(request.base));
    await searchIndex(built);
    await swap(built, out);
  } catch (problem) {
    await rm(built, { recursive: true, force: true });
    throw problem;
  }
  return { out, pages: buildLog().pages, catalogue };
}

export async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, {
    'as-of': { type: 'string' },
    base: { type: 'string' },
    help: { type: 'boolean', short: 'h' },
  });
  if (values.help) {
    process.stdout.write(help);
    return 0;
  }
  const site = await build({ asOf: values['as-of'], base: values.base });
  if (site === null) return 1;
  process.stdout.write(`Built ${site.pages} pages for ${site.catalogue.asOf} into ${site.out}\n`);
  return 0;
}

await runIfMain(import.meta, main);
