/** The steps of a build: check, plan, make, look through, swap into place. A failure leaves the site that was there. */

import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { contentDir, openContent } from '../content.ts';
import type { Day } from '../core/days.ts';
import { changesFile } from '../core/reading/changeFile.ts';
import { takeKeptSince } from '../resultStore.ts';
import { searchRecords } from '../site/data/searchRecords.ts';
import { routesOf } from '../site/routes.ts';
import { listPath } from './addressList.ts';
import { allEnded } from './allEnded.ts';
import { finish } from './finish.ts';
import { isDiskFull } from './fullDisk.ts';
import { type BuildJob, markOf, outDir, prepare, root } from './job.ts';
import { lastBuild, linkFiles, noLastBuild, programHash } from './lastBuild.ts';
import { clearLeftAside } from './leftAside.ts';
import { oneAtATime } from './oneAtATime.ts';
import { addOwnPages } from './ownPages.ts';
import { planOf } from './plan.ts';
import { makeAll } from './pool.ts';
import { privacyScan } from './privacyScan.ts';
import { startSearchIndex } from './searchIndex.ts';
import { clearLeftovers, newBuildingFolder } from './siteFolders.ts';
import { removeSite } from './siteMark.ts';
import { type BuildRecord, inputDigest, upToDate } from './upToDate.ts';

export interface BuildOptions {
  /** A day other than the usual one, YYYY-MM-DD. */
  asOf?: string | undefined;
  /** Path below which the site lives, with a slash at both ends. */
  base: string;
  /** Makes everything, also what shows nothing new. */
  afresh?: boolean | undefined;
  /** Leaves content/addresses.csv as it is: for a build that is only looked at. */
  leaveList?: boolean | undefined;
  /** Made of a proposal: leaves the lists too, and asks search engines to leave the site out. */
  preview?: boolean | undefined;
}

export interface BuiltSite {
  out: string;
  /** Files that were made. */
  made: number;
  /** Files taken from the site before. */
  unchanged: number;
  /** Addresses that were added to the list of the published ones. */
  listed: number;
  yardName: string;
  /** The day it shows. */
  asOf: Day;
}

/**
 * Builds the site of CONTENT_DIR into OUT_DIR. Returns null when the content has errors, after printing the report;
 * throws when a later step fails. Either way the output folder is as it was.
 */
export async function build(options: BuildOptions): Promise<BuiltSite | null> {
  const waiting = () => process.stderr.write('Another build is under way; waiting for it ...\n');
  const out = outDir();
  try {
    return await oneAtATime(join(root, '.build/build.lock'), waiting, async () => {
      // First of all: where the power went in the middle of a swap, the site that was there comes back, whatever becomes of this build.
      clearLeftovers(out);
      for (const path of [listPath(contentDir()), join(contentDir(), changesFile)])
        await clearLeftAside(path);
      takeKeptSince(options.afresh ? Date.now() : 0);
      return buildNow(options, out);
    });
  } catch (problem) {
    throw isDiskFull(problem) ? fullDisk(problem) : problem;
  }
}

async function buildNow(
  { asOf, base, afresh = false, leaveList = false, preview = false }: BuildOptions,
  out: string,
): Promise<BuiltSite | null> {
  const content = await openContent({ asOf });
  const settings = { program: await programHash(root), base, leaveList: leaveList || preview, preview };
  const before = afresh ? null : await upToDate(out, inputDigest(settings, content));
  if (before !== null) return asItIs(before, out, content.asOf);
  const job = await prepare({ settings, content, out, afresh });
  return job && buildFrom(job);
}

/** The site that is there, with what its check said. */
function asItIs({ files, yardName, report }: BuildRecord, out: string, asOf: Day): BuiltSite {
  process.stderr.write(report);
  return { out, made: 0, unchanged: files, listed: 0, yardName, asOf };
}

async function buildFrom(job: BuildJob): Promise<BuiltSite> {
  const { site, out, built, settings } = job;
  let search: ReturnType<typeof startSearchIndex> | null = null;
  try {
    await newBuildingFolder(out, markOf(site.all));
    search = startSearchIndex({ records: searchRecords(site.all), out, program: settings.program });
    const { plan, linked, made } = await fill(job, search);
    const listed = await finish(job, [...linked, ...made], plan);
    await search.stop();
    const { yard, asOf } = site.all;
    return { out, made: made.length, unchanged: linked.length, listed, yardName: yard.name, asOf };
  } catch (problem) {
    // Asked before anything is removed.
    const isFull = isDiskFull(problem, [dirname(out), root, tmpdir()]);
    await search?.stop();
    removeSite(built);
    throw isFull ? fullDisk(problem) : problem;
  }
}

/** Makes what has changed and takes what has not; what there is to know of all these files. */
async function fill(job: BuildJob, search: ReturnType<typeof startSearchIndex>) {
  const { site, out, built, secrets, globalInputs } = job;
  const routes = routesOf(site);
  const scan = privacyScan(secrets, site.all);
  const before = job.afresh
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

function fullDisk(cause: unknown): Error {
  return new Error(
    'the disk is full, so nothing was published and the site is as it was. Make room, and build again.',
    {
      cause,
    },
  );
}
