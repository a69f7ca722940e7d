/** The folders beside the output: where a site is built, and where the one before it waits to be removed. */

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, renameSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { markOf, presenceOf } from './processMark.ts';
import { readMark, removeSite, type SiteMark, writeMark } from './siteMark.ts';

type Purpose = 'building' | 'old';

const swapper = fileURLToPath(new URL('swapFolders.ts', import.meta.url));

/**
 * Folder beside the output in which this process works; on the same disk, so that the swap is a rename. Its name tells the process by its
 * number and by when it was started.
 */
export function folderBeside(out: string, purpose: Purpose): string {
  const { pid, started } = markOf(process.pid);
  return join(dirname(out), `.${basename(out)}-${purpose}-${pid}${started ? `-${started}` : ''}`);
}

/** Makes the folder in which this process builds, empty but for the mark of a site, before several programs write into it at once. */
export async function newBuildingFolder(out: string, mark: SiteMark): Promise<string> {
  const built = folderBeside(out, 'building');
  removeSite(built);
  await mkdir(built, { recursive: true });
  writeMark(built, mark);
  return built;
}

interface Leftover {
  path: string;
  purpose: string;
}

/**
 * Whether a folder is a site, or was to become one. False for one that has just gone: a swapping process that outlived its build gives the old site
 * another name when it is done.
 */
function isOfBuild(path: string): boolean {
  try {
    return readMark(path) !== null || readdirSync(path).length === 0;
  } catch {
    return false;
  }
}

/** Folders beside the output that processes have left which are gone. What was not made by a build is none of them, whatever its name. */
function leftoversOf(out: string): Leftover[] {
  if (!existsSync(dirname(out))) return [];
  const escaped = basename(out).replace(/[^\w-]/g, '\\$&');
  const pattern = new RegExp(`^\\.${escaped}-(building|old|gone)-(\\d+)(?:-(\\d+))?$`);
  return readdirSync(dirname(out)).flatMap(name => {
    const [, purpose, pid, started] = pattern.exec(name) ?? [];
    if (purpose === undefined) return [];
    const path = join(dirname(out), name);
    const owner = { ...markOf(Number(pid)), started: started ?? null };
    return isOfBuild(path) && presenceOf(owner) === 'gone' ? [{ path, purpose }] : [];
  });
}

/** How the system puts it that a folder has gone, or that there is one in its place already. */
const movedOn = new Set(['ENOENT', 'ENOTEMPTY', 'EEXIST']);

/** Puts the site of before back, unless the swapping process, which may have outlived its build, puts one in place in this moment. */
function putBack(old: string, out: string): void {
  try {
    renameSync(old, out);
  } catch (problem) {
    if (!movedOn.has((problem as NodeJS.ErrnoException).code ?? '')) throw problem;
  }
}

/**
 * Clears what builds that were killed have left beside the output. Where the power went in the middle of a swap, so that the place is
 * empty, the site that was there is put back.
 */
export function clearLeftovers(out: string): void {
  for (const { path, purpose } of leftoversOf(out)) {
    if (purpose === 'old' && !existsSync(out)) putBack(path, out);
    else removeSite(path);
  }
}

/**
 * Puts the finished folder in the place of the one that was there, whatever happens to this process. Throws when it cannot. The old site is
 * removed afterwards, while this process goes on: with thousands of pages that takes seconds.
 */
export async function swapIn(finished: string, out: string): Promise<void> {
  const old = folderBeside(out, 'old');
  removeSite(old);
  const child = spawn(process.execPath, [swapper, finished, out, old], {
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', text => {
    said += text;
  });
  const swapped = await Promise.race([
    once(child.stdout, 'data').then(() => true),
    once(child, 'close').then(() => false),
  ]);
  if (!swapped)
    throw new Error(
      `the finished site could not be put in place: ${said.split('\n').find(line => /Error/.test(line)) ?? said}`,
    );
  child.stdout.destroy();
  child.stderr.destroy();
  child.unref();
}
