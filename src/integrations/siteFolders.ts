/** The folders beside the output: where a site is built, and where the one before it waits to be removed. */

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isRunning } from './oneAtATime.ts';

type Purpose = 'building' | 'old' | 'cache';

const swapper = fileURLToPath(new URL('swapFolders.mjs', import.meta.url));

/** Folder beside the output in which this process works; on the same disk, so that the swap is a rename. */
export function folderBeside(out: string, purpose: Purpose): string {
  return join(dirname(out), `.${basename(out)}-${purpose}-${process.pid}`);
}

/**
 * Makes the folder in which this process builds, empty, before several programs write into it at once. A killed build may have left one of this
 * name: processes get the numbers of earlier ones.
 */
export async function newBuildingFolder(out: string): Promise<string> {
  const built = folderBeside(out, 'building');
  await rm(built, { recursive: true, force: true });
  await mkdir(built, { recursive: true });
  return built;
}

/**
 * Clears what builds that were killed have left beside the output. Where the power went in the middle of a swap, so that the place is
 * empty, the site that was there is put back.
 */
export async function clearLeftovers(out: string): Promise<void> {
  const escaped = basename(out).replace(/[^\w-]/g, '\\$&');
  const pattern = new RegExp(`^\\.${escaped}-(building|old|gone|cache)-(\\d+)$`);
  for (const name of await readdir(dirname(out))) {
    const [, purpose, pid] = pattern.exec(name) ?? [];
    if (pid === undefined || isRunning(Number(pid))) continue;
    const left = join(dirname(out), name);
    if (purpose === 'old' && !existsSync(out)) await rename(left, out);
    else await rm(left, { recursive: true, force: true });
  }
}

/**
 * Puts the finished folder in the place of the one that was there, whatever happens to this process. Throws when it cannot. The old site is
 * removed afterwards, while this process goes on: with thousands of pages that takes seconds.
 */
export async function swapIn(finished: string, out: string): Promise<void> {
  const old = folderBeside(out, 'old');
  await rm(old, { recursive: true, force: true });
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
