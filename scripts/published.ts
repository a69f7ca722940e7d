/**
 * `npm run published`: looks after what a yard has to remember of its published site. Adding to it needs no packages, so the publishing workflow
 * runs it where nothing is installed: `node scripts/published.ts add FOLDER`.
 */

import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { oneAtATime } from '../src/build/oneAtATime.ts';
import { emptyList, listRows } from '../src/core/addresses/listText.ts';
import { mergedList } from '../src/core/addresses/mergedList.ts';
import { unlogged, withLines } from '../src/core/records/changeLog.ts';
import { writeWhole } from '../src/files.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const help = `Looks after what was published: content/addresses.csv, the list of every address the site ever had, and content/changes.jsonl, what it has
told of the list of lots.

  npm run published -- restore       where one of them is missing: takes it back from the site that is online
  npm run published -- start         begins an empty list, for a yard that was never published
  npm run published -- add FOLDER    adds what is in the files of these names in FOLDER, such as dist, and not in those here

  --base /orchard/    the path below which the site is online, for restore

CONTENT_DIR names another content folder; BASE_PATH does what --base does.
`;

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const listName = 'addresses.csv';
const logName = 'changes.jsonl';
const patienceMs = 30_000;

function shown(path: string): string {
  const near = relative(process.cwd(), path);
  return near === '' || near.startsWith('..') ? path : near;
}

function textOf(path: string): string | null {
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}

const linesInWords = (count: number) => `${count} new ${count === 1 ? 'line' : 'lines'}`;

async function add(content: string, folder: string): Promise<string> {
  const [list, from] = [join(content, listName), join(folder, listName)];
  const published = textOf(from);
  if (published === null) {
    throw new UsageError(
      `there is no ${shown(from)}. A build that publishes writes it; without it nobody knows which addresses are online.`,
    );
  }
  const merged = mergedList(textOf(list), published);
  if ('problem' in merged) {
    throw new UsageError(`nothing was added to ${shown(list)}: ${merged.problem}.`);
  }
  if (merged.added > 0) await writeWhole(list, merged.text);
  const log = join(content, logName);
  const before = textOf(log) ?? '';
  const told = unlogged(before, textOf(join(folder, logName)) ?? '');
  if (told.length > 0) await writeWhole(log, withLines(before, told));
  return `${linesInWords(merged.added)} in ${shown(list)}, ${linesInWords(told.length)} in ${shown(log)}\n`;
}

/** What the site answers at an address; null where it says that there is nothing. Throws when it cannot be asked. */
async function ask(address: string): Promise<string | null> {
  const answer = await fetch(address, { signal: AbortSignal.timeout(patienceMs) }).catch(
    (problem: Error & { cause?: Error }) => {
      throw new UsageError(
        `${address} could not be asked (${problem.cause?.message ?? problem.message}). Try again when the site answers; npm run published -- start begins a new list for a yard that was never published.`,
      );
    },
  );
  if (answer.ok) return answer.text();
  if (answer.status === 404 || answer.status === 410) return null;
  throw new UsageError(`${address} answered with ${answer.status}; try again when the site answers.`);
}

/** The address in yard.yaml, read by itself: the records may have errors while the list is missing. */
async function siteAddress(content: string, base: string): Promise<string> {
  const { parse } = await import('yaml');
  const file = join(content, 'yard.yaml');
  const yard: unknown = parse(textOf(file) ?? '');
  const address = yard !== null && typeof yard === 'object' && 'address' in yard ? yard.address : undefined;
  if (typeof address !== 'string' || !URL.canParse(base, address)) {
    throw new UsageError(`${shown(file)} does not say at which address the site is online.`);
  }
  return new URL(base, address).href;
}

function isStock(text: string | null): boolean {
  try {
    return Array.isArray((JSON.parse(text ?? '') as { lots?: unknown }).lots);
  } catch {
    return false;
  }
}

/** Whether a text is a log as the build writes it: a host may answer with a page of its own. */
function isLog(text: string | null): text is string {
  const lines = (text ?? '').split(/\r\n|\n|\r/).filter(line => line.trim() !== '');
  return lines.length > 0 && lines.every(line => /^\{"(?:id|day)":".*"lot":".*\}$/.test(line));
}

/** Takes the log back where it is missing and the site carries it; where it does not, nothing was told yet. */
async function restoreLog(content: string, base: string): Promise<string> {
  const log = join(content, logName);
  if ((textOf(log) ?? '').trim() !== '') return '';
  const site = await siteAddress(content, base);
  const published = await ask(new URL(logName, site).href);
  if (!isLog(published)) return '';
  await writeWhole(log, published);
  return `${shown(log)} was missing. It was taken back from ${site}; commit it.\n`;
}

async function restoreList(content: string, base: string): Promise<string> {
  const list = join(content, listName);
  if ((textOf(list) ?? '').trim() !== '') return `${shown(list)} is there.\n`;
  const site = await siteAddress(content, base);
  const published = await ask(new URL(listName, site).href);
  const rows = published === null ? [] : listRows(published);
  if (published !== null && !('problem' in rows) && rows.length > 0) {
    await writeWhole(list, published);
    return `${shown(list)} was missing. ${rows.length} lines were taken back from ${site}; commit it.\n`;
  }
  if (isStock(await ask(new URL('stock.json', site).href))) {
    throw new UsageError(
      `${shown(list)} is missing, and the site at ${site} does not carry it. Take it back from an earlier version: git log -- ${shown(list)}`,
    );
  }
  return `Nothing was published at ${site} yet; the first build begins ${shown(list)}.\n`;
}

async function restore(content: string, base: string): Promise<string> {
  return (await restoreList(content, base)) + (await restoreLog(content, base));
}

async function start(content: string): Promise<string> {
  const list = join(content, listName);
  const text = textOf(list) ?? '';
  if (text.trim() !== '' && text.trim() !== emptyList.trim()) {
    throw new UsageError(
      `${shown(list)} has lines already. Take it away first if they are of another yard than yours.`,
    );
  }
  await writeWhole(list, emptyList);
  return `${shown(list)} is begun.\n`;
}

function basePathOf(given: string | undefined): string {
  return `/${(given ?? process.env.BASE_PATH ?? '').replace(/^\/+|\/+$/g, '')}/`.replace(/^\/\/$/, '/');
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    base: { type: 'string' },
  });
  const [what, folder, ...more] = positionals;
  const content = resolve(process.env.CONTENT_DIR ?? 'content');
  const work = () => {
    if (more.length === 0 && what === 'add' && folder !== undefined) return add(content, resolve(folder));
    if (folder === undefined && what === 'restore') return restore(content, basePathOf(values.base));
    if (folder === undefined && what === 'start') return start(content);
    throw new UsageError('say what to do: restore, start, or add FOLDER. Try --help.');
  };
  const waiting = () => process.stderr.write('A build is under way; waiting for it ...\n');
  // A build adds lines to the list of addresses too.
  const said = await oneAtATime(join(root, '.build/build.lock'), waiting, async () => work());
  process.stdout.write(said);
  return 0;
}

await runIfMain(import.meta, main);
