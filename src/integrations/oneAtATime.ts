/** Keeps two builds of one project apart: the site generator has a scratch folder that they would share. */

import { link, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

const lookAgainMs = 300;

/** Whether a process of this machine is still there. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (problem) {
    return (problem as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * Takes the lock file when nobody holds it; false when a running process does. A lock whose holder died is removed. The file is signed
 * before it gets its name, so that there is never a lock without a holder.
 */
async function take(lock: string): Promise<boolean> {
  const signed = `${lock}-${process.pid}`;
  await writeFile(signed, String(process.pid));
  try {
    await link(signed, lock);
    return true;
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'EEXIST') throw problem;
  } finally {
    await rm(signed, { force: true });
  }
  const holder = Number(await readFile(lock, 'utf8').catch(() => process.pid));
  if (!isRunning(holder)) await rm(lock, { force: true });
  return false;
}

/** Runs work while holding a lock file, after waiting for whoever holds it; `onWait` is called once when there is a wait. */
export async function oneAtATime<T>(lock: string, onWait: () => void, work: () => Promise<T>): Promise<T> {
  await mkdir(dirname(lock), { recursive: true });
  for (let waited = false; !(await take(lock)); waited = true) {
    if (!waited) onWait();
    await pause(lookAgainMs);
  }
  try {
    return await work();
  } finally {
    await rm(lock, { force: true });
  }
}
