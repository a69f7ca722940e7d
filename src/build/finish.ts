/** The last steps of a build: what follows from the finished pages, the swap, and the notes of what was published. */

import { addressesFile } from '../core/reading/addressFile.ts';
import { changesFile } from '../core/reading/changeFile.ts';
import type { FileAside } from '../files.ts';
import { clearOldPhotos } from '../photos/store.ts';
import { linksOf } from '../site/site.ts';
import {
  checkAddresses,
  newList,
  publishList,
  serveMovedFiles,
  writeNewList,
  writeRedirects,
} from './addressList.ts';
import { newLog, publishLog, writeNewLog } from './changeLog.ts';
import { type FinishedFile, readSite } from './finishedSite.ts';
import { assertOurs, type BuildJob } from './job.ts';
import { writeList } from './lastBuild.ts';
import type { Plan } from './plan.ts';
import { privacyScan, refusePrivate } from './privacyScan.ts';
import { swapIn } from './siteFolders.ts';
import { writeSitemap } from './sitemap.ts';
import { inputDigest, siteDigest, type WrittenFile, writeRecord } from './upToDate.ts';

/** A site that has been looked through, with the files that are put in place after it. All of them are written, beside their places. */
interface Finished {
  /** Addresses that are new in the list. */
  listed: number;
  asides: FileAside[];
}

/** Looks the built site through and adds what follows from its pages. */
async function lookThrough(
  job: BuildJob,
  known: readonly FinishedFile[],
  { digests }: Plan,
): Promise<Finished> {
  const { settings, content, records, history, site, out, built, secrets, globalInputs } = job;
  const links = linksOf(site);
  const scan = privacyScan(secrets, site.all);
  const { files, pages } = readSite(built, known, (file, bytes) => refusePrivate(scan, secrets, file, bytes));
  await writeSitemap(built, pages, links);
  const isPublished = content.asOf === content.publishedOn;
  const addresses = checkAddresses(records.addresses, site.all, pages, {
    day: { asOf: content.asOf, isPublished },
    shownDir: secrets.shownContent,
  });
  const moved = serveMovedFiles(built, addresses, files.keys());
  writeRedirects(built, addresses, links, { files, moved });
  const list = newList(content.dir, settings.leaveList ? [] : addresses.news);
  publishList(built, list);
  const log = newLog(content.dir, isPublished && !settings.leaveList ? history.lines : []);
  publishLog(built, log);
  const written: WrittenFile[] = [];
  if (list !== null && list.added > 0) written.push({ path: addressesFile, text: list.text });
  if (log !== null && log.added > 0) written.push({ path: changesFile, text: log.text });
  const asides: (FileAside | null)[] = [];
  try {
    asides.push(await writeNewLog(content.dir, log));
    asides.push(await writeNewList(content.dir, list));
    asides.push(await writeList(out, globalInputs, digests, { files, notes: secrets.notes }));
    asides.push(
      await writeRecord(out, {
        inputs: inputDigest(settings, content, written),
        site: siteDigest(built),
        files: known.length,
        yardName: site.all.yard.name,
        report: job.report,
      }),
    );
  } catch (problem) {
    for (const file of asides) await file?.drop();
    throw problem;
  }
  return { listed: list?.added ?? 0, asides: asides.filter(file => file !== null) };
}

/**
 * Finishes a built site, puts it in place and notes what was published. All that needs room on the disk is written before the swap, so that
 * afterwards nothing but renaming is left to do. Returns how many addresses were listed.
 */
export async function finish(job: BuildJob, known: readonly FinishedFile[], plan: Plan): Promise<number> {
  const { listed, asides } = await lookThrough(job, known, plan);
  try {
    // Whatever came to lie there during the build.
    assertOurs(job.out, job.site.all);
    await swapIn(job.built, job.out);
    for (const file of asides) await file.put();
  } finally {
    for (const file of asides) await file.drop();
  }
  await clearOldPhotos();
  return listed;
}
