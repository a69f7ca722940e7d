/** The step of a build that keeps old addresses alive: it refuses a site that has lost one, writes the redirects, and lists what is new. */

import { copyFileSync, existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { withRows } from '../core/addresses/listText.ts';
import { type MovedFile, movedFiles } from '../core/addresses/movedFiles.ts';
import {
  type BuiltPage,
  type LostAddress,
  type Publication,
  publicationOf,
  type Redirect,
} from '../core/addresses/publication.ts';
import type { Catalogue } from '../core/catalogue.ts';
import type { AddressRow } from '../core/records/address.ts';
import { writeWhole } from '../files.ts';
import { headerTable, redirectPage, redirectTable } from '../outputs/redirects.ts';
import type { SiteLinks } from '../outputs/siteLinks.ts';
import type { FinishedPage } from './finishedSite.ts';

const listName = 'addresses.csv';

/**
 * Pages whose parts people link to by hand, and whose parts the grower names: guides in general and videos. A guide for a place has the parts of
 * the general one; parts of lists come and go with stock.
 */
const promising = /^\/(?:guides|videos)\/[^/]+\/$/;
/** Parts that the program puts in by rule. */
const putIn = /^(?:main$|caution-)/;

function builtPage({ path, ids, jumps }: FinishedPage): BuiltPage {
  const promised = promising.test(path) ? ids.filter(id => jumps.has(id) && !putIn.test(id)) : [];
  return { path, ids, promised };
}

function lostInWords({ row, end }: LostAddress, dir: string): string {
  const place = `${join(dir, listName)}:${row.line}`;
  const since = `${row.address}, published on ${row.since},`;
  const remedy =
    'Put the record or the heading back, or say where it leads now: npm run rename, or a line at the end of that file with the address, the day and the page to go to.';
  if (end === null) return `${place} ${since} is no longer there. ${remedy}`;
  if ('loop' in end) return `${place} ${since} leads round in a circle: ${end.loop.join(' to ')}. ${remedy}`;
  return `${place} ${since} leads to ${end.to}, which is not there. ${remedy}`;
}

/** Messages shown at most: a place taken away takes hundreds of addresses with it. */
const toldAtMost = 20;

/** What a built site does to the addresses of before. Throws when one of them would lead nowhere. */
export function checkAddresses(
  rows: readonly AddressRow[],
  { codes, asOf }: Pick<Catalogue, 'codes' | 'asOf'>,
  pages: readonly FinishedPage[],
  shownDir: string,
): Publication {
  const publication = publicationOf(rows, codes, pages.map(builtPage), asOf);
  const { lost } = publication;
  if (lost.length > 0) {
    const told = lost.slice(0, toldAtMost).map(address => lostInWords(address, shownDir));
    if (lost.length > toldAtMost) told.push(`... and ${lost.length - toldAtMost} more`);
    throw new Error(`the site was not published, since addresses would break:\n${told.join('\n')}`);
  }
  return publication;
}

/** File of a page that sends readers on, below the output folder. */
export function redirectFile(from: string): string {
  return `${from.slice(1)}${from.endsWith('/') ? 'index.html' : ''}`;
}

/** Writes a page that sends readers on; false when it is there already. */
export function writeRedirect(built: string, redirect: Redirect, links: SiteLinks): boolean {
  const file = redirectFile(redirect.from);
  if (existsSync(join(built, file))) return false;
  mkdirSync(dirname(join(built, file)), { recursive: true });
  writeFileSync(join(built, file), redirectPage(redirect, links));
  return true;
}

/**
 * Serves calendars and other files that people keep the address of at their old address too: a host of plain files has no other way to
 * send on what is no page. `files` are those of the built site. Returns what was copied.
 */
export function serveMovedFiles(
  built: string,
  { redirects }: Publication,
  files: Iterable<string>,
): MovedFile[] {
  const moved = movedFiles(redirects, files);
  for (const { from, to } of moved) {
    mkdirSync(dirname(join(built, from)), { recursive: true });
    copyFileSync(join(built, to), join(built, from));
  }
  return moved;
}

/**
 * Writes the pages that send readers on, but for those that are there already (a short address never gets another target while its page is
 * there), and the tables for hosts that read them.
 */
export function writeRedirects(
  built: string,
  { redirects }: Publication,
  links: SiteLinks,
  files: readonly MovedFile[],
): void {
  for (const redirect of redirects) writeRedirect(built, redirect, links);
  writeFileSync(join(built, '_redirects'), redirectTable(redirects, links, files));
  writeFileSync(join(built, '_headers'), headerTable(links));
}

/** Adds the new addresses at the end of the list; the file is replaced whole, so that no line is ever cut. Returns how many there are. */
export async function listNews(content: string, { news }: Publication): Promise<number> {
  if (news.length === 0) return 0;
  const path = join(content, listName);
  const before = await readFile(path, 'utf8').catch((problem: NodeJS.ErrnoException) => {
    if (problem.code === 'ENOENT') return '';
    throw problem;
  });
  await writeWhole(path, withRows(before, news));
  return news.length;
}
