/** Who makes which page of a build: the generator, the press, or the site before. */

import { pageKey, planPages } from '../pageReuse.ts';
import { PRINTED_FROM, type PrintedFile, printedFiles } from '../views/printed.ts';
import { shownOfPrinted } from '../views/shown.ts';
import type { BuildJob } from './buildJob.ts';
import { type CarryOver, startCarryOver } from './carryOver.ts';
import type { FinishedFile } from './finishedSite.ts';
import { type Press, type PrintRun, shortAddressesOf, startPress } from './press.ts';
import { nothingPublished, type PublishedSite, publishedSite } from './publishedPages.ts';

/** What is done beside the generator, and what it need not render. */
export interface Work {
  press: Press | null;
  carryOver: CarryOver | null;
  /** The unchanged pages that are carried over, with their keys. */
  carried: PrintRun['files'];
  /** Pages of the site before that may be taken again, if they show the same. */
  standing: ReadonlyMap<string, FinishedFile>;
}

/** Of the files that can be printed, those that show what they showed, as they stand. */
function unchangedOf(files: readonly PrintedFile[], { catalogue, ground }: BuildJob, before: PublishedSite) {
  if (before.keys.size === 0) return [];
  return files.flatMap(job => {
    const { file } = job;
    const key = pageKey(ground, file, shownOfPrinted(catalogue, job));
    const standing = before.keys.get(file) === key ? before.untouched(file) : null;
    return standing === null ? [] : [{ ...standing, key }];
  });
}

/** How many pages are to be made besides those that are unchanged. Calendars cost little, and not every guide has one at every place. */
function pagesBesides(unchanged: Work['carried'], files: readonly PrintedFile[]): number {
  const known = new Set(unchanged.map(({ file }) => file));
  return files.filter(({ kind, file }) => kind !== 'calendar' && !known.has(file)).length;
}

/** Pages of the site before, but for those that are taken care of, that stand as they were published. */
function standingPages(before: PublishedSite, leftOut: ReadonlySet<string>): Map<string, FinishedFile> {
  const standing = new Map<string, FinishedFile>();
  for (const file of before.keys.keys()) {
    const found = leftOut.has(file) ? null : before.untouched(file);
    if (found !== null) standing.set(file, found);
  }
  return standing;
}

function carryOverOf({ catalogue, built, out, base }: BuildJob, carried: Work['carried']): CarryOver {
  return startCarryOver({
    built,
    out,
    address: catalogue.yard.address,
    base,
    files: carried.map(({ file }) => file),
    redirects: shortAddressesOf(catalogue, carried),
  });
}

function pressOf(job: BuildJob, files: readonly PrintedFile[], afresh: boolean): Press {
  const { catalogue, built, out, base, ground, secrets } = job;
  return startPress({ all: catalogue, built, out, base, ground, afresh, secrets }, files);
}

/**
 * Decides which pages the generator renders, which are those of the site before, and which the press prints, and starts what works beside
 * the generator. Where few of the pages that can be printed have changed, the generator renders these, and the others are carried over.
 * `afresh` takes nothing from the site before; `onPress` prints however few pages there are.
 */
export async function planWork(
  job: BuildJob,
  { afresh, onPress }: { afresh: boolean; onPress: boolean },
): Promise<Work> {
  const { catalogue, out, ground, secrets, scan } = job;
  const before = afresh ? nothingPublished : await publishedSite(out, ground, { notes: secrets.notes, scan });
  const files = printedFiles(catalogue, onPress ? 1 : undefined);
  const unchanged = onPress ? [] : unchangedOf(files, job, before);
  const isPrinted = files.length > 0 && (onPress || pagesBesides(unchanged, files) >= PRINTED_FROM);
  const carried = isPrinted ? [] : unchanged;
  const leftOut = new Set((isPrinted ? files : carried).map(({ file }) => file));
  const standing = standingPages(before, leftOut);
  const keys = new Map([...standing.keys()].map(file => [file, before.keys.get(file)!]));
  planPages(ground, keys, { leftOut, moulds: isPrinted });
  return {
    press: isPrinted ? pressOf(job, files, afresh) : null,
    carryOver: carried.length > 0 ? carryOverOf(job, carried) : null,
    carried,
    standing,
  };
}
