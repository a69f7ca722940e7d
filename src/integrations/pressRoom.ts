/**
 * The press: a program of its own that prints the pages of which a yard has thousands, while the generator renders all others. It is handed
 * the catalogue, works out what every page shows, takes the unchanged ones from the site before, and pours the rest into their moulds.
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate as turnOfEvents } from 'node:timers/promises';
import { careYears } from '../careYears.ts';
import type { Catalogue, CultivarEntry } from '../core/catalogue.ts';
import { outlooksFor } from '../outlooks.ts';
import { type SiteLinks, siteLinks } from '../outputs/siteLinks.ts';
import { pageKey } from '../pageReuse.ts';
import { comparedFile } from '../site/data/comparedFile.ts';
import { cultivarPage } from '../site/pages/cultivars/cultivarPage.ts';
import { arrivalCalendarFile, placeCalendarFile } from '../site/pages/guides/guideFiles.ts';
import { guidePage } from '../site/pages/guides/guidePage.ts';
import { placeTasks } from '../site/pages/guides/guideViews.ts';
import { lotPage } from '../site/pages/lots/lotPage.ts';
import { type Mould, mouldFrom, type PouredKind } from '../views/mould.ts';
import type { PageText, PageTools } from '../views/pageText.ts';
import { type PrintedFile, printedFiles } from '../views/printed.ts';
import { shownOfPrinted } from '../views/shown.ts';
import { writeRedirect } from './addressList.ts';
import { type FinishedFile, finishedFile } from './finishedSite.ts';
import {
  type FromPress,
  type KeyedFile,
  type PressOrder,
  type PrintRun,
  shortAddressOf,
  type ToPress,
} from './press.ts';
import { type PrivacyScan, privacyScan, refusePrivate } from './privacyScan.ts';
import { nothingPublished, type PublishedSite, publishedSite, takeOver } from './publishedPages.ts';

interface MadeUp {
  file: string;
  key: string;
}

/** A file that stands in the site before, a page to pour, and a text that needs no mould. */
type Before = MadeUp & { before: FinishedFile };
type Page = MadeUp & { kind: PouredKind; page: PageText };
type Text = MadeUp & { text: string };

type MouldTexts = Record<PouredKind, string>;
type Moulds = Record<PouredKind, Mould>;

/** What every page is made with. */
interface Shop {
  tools: PageTools;
  scan: PrivacyScan;
  published: PublishedSite;
}

/** Pages made up before it is looked whether the moulds have come. */
const jobsBetweenLooks = 20;

function mouldsFrom(texts: MouldTexts, links: SiteLinks): Moulds {
  return {
    lots: mouldFrom(texts.lots, 'lots', links),
    cultivars: mouldFrom(texts.cultivars, 'cultivars', links),
    guides: mouldFrom(texts.guides, 'guides', links),
  };
}

const noPhotos: PageTools['photo'] = async file => {
  throw new Error(`the press has no photographs, and was asked for ${file}`);
};

/** The text of a calendar; null for a guide that has nothing to do by a date there. */
async function calendarOf(
  { at: { guide, place, species }, form }: PrintedFile & { kind: 'calendar' },
  all: Catalogue,
  { absolute }: SiteLinks,
): Promise<string | null> {
  const year = (await careYears(all, species)).get(place.id)!;
  if (form !== null) return arrivalCalendarFile(all, guide, place, year, form, absolute);
  return placeTasks(all, guide, place, year).length === 0
    ? null
    : placeCalendarFile(all, guide, place, year, absolute);
}

async function compared(entry: CultivarEntry, all: Catalogue, { href }: SiteLinks): Promise<string> {
  const places = await outlooksFor(all);
  return JSON.stringify(comparedFile(all, places.get(all.home.id)!, entry, href));
}

/** What a file shows; null for one that is not to be. */
async function contentOf(job: PrintedFile, { all }: PressOrder, tools: PageTools) {
  const { links } = tools;
  switch (job.kind) {
    case 'lots':
      return { kind: job.kind, page: await lotPage(all, job.entry, tools) };
    case 'cultivars':
      return { kind: job.kind, page: await cultivarPage(all, job.entry, await outlooksFor(all), tools) };
    case 'compare':
      return { text: await compared(job.entry, all, links) };
    case 'guides': {
      const year = (await careYears(all, job.at.species)).get(job.at.place.id)!;
      return { kind: job.kind, page: guidePage(all, job.at, year, { links }) };
    }
    case 'calendar': {
      const text = await calendarOf(job, all, links);
      return text === null ? null : { text };
    }
  }
}

/** What a job gives before it is poured: from the site before where it shows nothing new, else made up; null for a file that is not to be. */
async function madeUp(job: PrintedFile, order: PressOrder, from: Shop): Promise<Before | Page | Text | null> {
  const { file } = job;
  const key = pageKey(order.ground, file, shownOfPrinted(order.all, job));
  const before = from.published.keys.get(file) === key ? from.published.untouched(file) : null;
  if (before !== null) return { file, key, before };
  const content = await contentOf(job, order, from.tools);
  return content && { file, key, ...content };
}

const madeFolders = new Set<string>();

function makeFolder(path: string): void {
  if (madeFolders.has(path)) return;
  mkdirSync(path, { recursive: true });
  madeFolders.add(path);
}

/** Takes a file over from the site before. */
function taken({ file, key, before }: Before, { out, built }: PressOrder): KeyedFile {
  takeOver(out, built, file);
  return { ...before, key };
}

/** Writes a file of the new site, and says what there is to know of it. */
function printed(
  { file, key }: MadeUp,
  text: string,
  { built, secrets }: PressOrder,
  scan: PrivacyScan,
): KeyedFile {
  const bytes = Buffer.from(text);
  refusePrivate(scan, secrets, file, bytes);
  makeFolder(dirname(join(built, file)));
  writeFileSync(join(built, file), bytes);
  return { ...finishedFile(file, bytes), key };
}

/**
 * Prints everything. What needs no mould is written at once; pages are poured as soon as the moulds are there, so that few of them wait in
 * memory, and their folders are made until then: they cost as much as the pages.
 */
async function work(order: PressOrder, ordered: Promise<MouldTexts>): Promise<PrintRun> {
  const { all, out, base, ground, afresh, secrets } = order;
  const links = siteLinks(all.yard.address, base);
  const scan = privacyScan(secrets, all);
  const shop: Shop = {
    tools: { links, photo: noPhotos },
    scan,
    published: afresh ? nothingPublished : await publishedSite(out, ground, { notes: secrets.notes, scan }),
  };
  const run: PrintRun = { files: [], reused: 0 };
  const waiting: Page[] = [];
  let moulds: Moulds | null = null;
  const arrived = ordered.then(texts => {
    moulds = mouldsFrom(texts, links);
    return moulds;
  });
  const keep = (file: KeyedFile) => {
    run.files.push(file);
    const redirect = shortAddressOf(all, file.file);
    if (redirect !== null) writeRedirect(order.built, redirect, links);
  };
  const pourWaiting = (from: Moulds) => {
    for (const page of waiting.splice(0)) keep(printed(page, from[page.kind](page.page), order, shop.scan));
  };
  for (const [index, job] of printedFiles(all, 1).entries()) {
    if (index % jobsBetweenLooks === 0) await turnOfEvents();
    const made = await madeUp(job, order, shop);
    if (made === null) continue;
    if ('page' in made) {
      waiting.push(made);
      makeFolder(dirname(join(order.built, made.file)));
    } else if ('before' in made) {
      keep(taken(made, order));
      run.reused += 1;
    } else keep(printed(made, made.text, order, shop.scan));
    if (moulds !== null) pourWaiting(moulds);
  }
  pourWaiting(await arrived);
  return run;
}

function answer(message: FromPress): void {
  process.send?.(message, () => process.disconnect());
}

const moulds = Promise.withResolvers<MouldTexts>();
process.on('message', (message: ToPress) => {
  if ('moulds' in message) moulds.resolve(message.moulds);
  else
    work(message.order, moulds.promise).then(
      run => answer({ run }),
      problem => answer({ problem: problem instanceof Error ? problem.message : String(problem) }),
    );
});
// A build that is killed takes its press with it.
process.on('disconnect', () => process.exit());
