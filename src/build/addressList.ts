/** The step of a build that keeps old addresses alive: it refuses a site that has lost one, writes the redirects, and lists what is new. */

import { copyFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { withRows } from '../core/addresses/listText.ts';
import { type MovedFile, movedFiles } from '../core/addresses/movedFiles.ts';
import {
  type BuiltPage,
  type LostAddress,
  type Publication,
  publicationOf,
  type SiteDay,
} from '../core/addresses/publication.ts';
import type { Catalogue } from '../core/catalogue.ts';
import { addressesFile } from '../core/reading/addressFile.ts';
import type { AddressRow } from '../core/records/address.ts';
import { type FileAside, writeAside } from '../files.ts';
import { headerTable, redirectPage, redirectTable } from '../outputs/redirects.ts';
import type { SiteLinks } from '../outputs/siteLinks.ts';
import type { FinishedPage } from './finishedSite.ts';

/** Path of the list in a content folder. */
export function listPath(content: string): string {
  return join(content, addressesFile);
}

/**
 * Pages whose parts people link to by hand, and whose parts the grower names: guides in general and videos. A guide for a place has the parts of
 * the general one; parts of lists come and go with stock.
 */
const promising = /^\/(?:guides|videos)\/[^/]+\/$/;
/** Parts that the program puts in by rule; those of footnotes have an underscore, which names of headings never have. */
const putIn = /^(?:main$|footnote-label$|caution-|note_)/;

function builtPage({ path, ids, fragments }: FinishedPage): BuiltPage {
  const promised = promising.test(path) ? ids.filter(id => fragments.has(id) && !putIn.test(id)) : [];
  return { path, ids, promised };
}

function lostInWords({ row, end }: LostAddress, dir: string): string {
  const place = `${join(dir, addressesFile)}:${row.line}`;
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
  { codes }: Pick<Catalogue, 'codes'>,
  pages: readonly FinishedPage[],
  { day, shownDir }: { day: SiteDay; shownDir: string },
): Publication {
  const publication = publicationOf(rows, codes, pages.map(builtPage), day);
  const { lost } = publication;
  if (lost.length > 0) {
    const told = lost.slice(0, toldAtMost).map(address => lostInWords(address, shownDir));
    if (lost.length > toldAtMost) told.push(`... and ${lost.length - toldAtMost} more`);
    throw new Error(`the site was not published, since addresses would break:\n${told.join('\n')}`);
  }
  return publication;
}

/** File of a page that sends readers on, below the output folder. */
function redirectFile(from: string): string {
  return `${from.slice(1)}${from.endsWith('/') ? 'index.html' : ''}`;
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
 * Writes the pages that send readers on, but for those that are among the `files` of the site already (short addresses are routes of their own),
 * and the tables for hosts that read them.
 */
export function writeRedirects(
  built: string,
  { redirects }: Publication,
  links: SiteLinks,
  { files, moved }: { files: ReadonlyMap<string, unknown>; moved: readonly MovedFile[] },
): void {
  for (const redirect of redirects) {
    const file = redirectFile(redirect.from);
    if (files.has(file)) continue;
    mkdirSync(dirname(join(built, file)), { recursive: true });
    writeFileSync(join(built, file), redirectPage(redirect, links));
  }
  writeFileSync(join(built, '_redirects'), redirectTable(redirects, links, moved));
  writeFileSync(join(built, '_headers'), headerTable(links));
}

function textOf(path: string): string {
  return existsSync(path) ? readFileSync(path, 'utf8') : '';
}

/** The list with what is new at its end. */
export interface NewList {
  text: string;
  /** How many lines are new. */
  added: number;
}

/** The list as it will be once the site is in place; null where there is none and nothing to begin one with. */
export function newList(content: string, news: Publication['news']): NewList | null {
  const text = withRows(textOf(listPath(content)), news);
  return text === '' ? null : { text, added: news.length };
}

/** Lays the list into the site, so that a lost one can be taken back from there. */
export function publishList(built: string, list: NewList | null): void {
  if (list !== null) writeFileSync(join(built, addressesFile), list.text);
}

/** Writes the list beside its place; the file is replaced whole, so that no line is ever cut. Null where nothing is new. */
export async function writeNewList(content: string, list: NewList | null): Promise<FileAside | null> {
  return list !== null && list.added > 0 ? writeAside(listPath(content), list.text) : null;
}
