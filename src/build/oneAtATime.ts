/** Keeps two builds of one project apart: the site generator has a scratch folder that they would share. */

import { randomUUID } from 'node:crypto';
import { link, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { markOf, type ProcessMark, presenceOf } from './processMark.ts';

const lookAgainMs = 300;
/** How often a holder touches its lock. */
const beatMs = 1000;
/** Looks at a lock that nobody touches until its holder counts as gone, where that cannot be told otherwise: 15 s, so that a machine must miss 15 beats. */
const looksWithoutBeat = 50;

interface Signature extends ProcessMark {
  /** No two locks are signed alike. */
  token: string;
}

/** Who holds a lock. A lock that cannot be read, as a power cut leaves it, has a holder of whom nothing is known. */
function signatureIn(text: string): Signature {
  try {
    const { pid, machine, started, token } = JSON.parse(text);
    if (typeof token === 'string' && /^[\w-]+$/.test(token)) return { pid, machine, started, token };
  } catch {
    // Broken.
  }
  return { pid: 0, machine: '', started: null, token: `unread-${text.length}` };
}

async function readSignature(lock: string): Promise<Signature | null> {
  const text = await readFile(lock, 'utf8').catch(() => null);
  return text === null ? null : signatureIn(text);
}

/** Touches the lock as long as it is ours, on a thread of its own: a build computes for seconds on end. */
const beating = `
const { workerData: { lock, token, beatMs } } = require('node:worker_threads');
const { readFileSync, utimesSync } = require('node:fs');
setInterval(() => {
  try {
    const now = new Date();
    if (readFileSync(lock, 'utf8').includes(token)) utimesSync(lock, now, now);
  } catch {}
}, beatMs);`;

/** What a waiting process has seen of the holder so far. */
interface Watch {
  token: string;
  touched: number;
  looks: number;
}

/** Whether the holder of a lock is gone, from its mark or because it has not touched the lock for long. */
async function isGone(lock: string, holder: Signature, watch: Watch): Promise<boolean> {
  const presence = presenceOf(holder);
  if (presence !== 'unknown') return presence === 'gone';
  const touched = await stat(lock).then(
    ({ mtimeMs }) => mtimeMs,
    () => 0,
  );
  if (watch.token !== holder.token || watch.touched !== touched) {
    Object.assign(watch, { token: holder.token, touched, looks: 0 });
  }
  watch.looks += 1;
  return watch.looks > looksWithoutBeat;
}

/** Gives a signed file the name of a lock, unless somebody else has it: there is never a lock without a holder. */
async function linkNew(signed: string, lock: string): Promise<boolean> {
  try {
    await link(signed, lock);
    return true;
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'EEXIST') throw problem;
    return false;
  }
}

/**
 * Takes over the lock of a holder that is gone. Whoever makes the file named after that holder may do so, and nobody else: of two that find the
 * same lock left, one would remove what the other has just taken.
 */
async function takeOver(lock: string, signed: string, holder: Signature): Promise<boolean> {
  const right = `${lock}-after-${holder.token}`;
  if (!(await linkNew(signed, right))) {
    const other = await readSignature(right);
    if (other !== null && presenceOf(other) === 'gone') await rm(right, { force: true });
    return false;
  }
  try {
    if ((await readSignature(lock))?.token !== holder.token) return false;
    await rename(signed, lock);
    return true;
  } finally {
    await rm(right, { force: true });
  }
}

/** Takes the lock when nobody holds it or its holder is gone; false when somebody does. */
async function take(lock: string, token: string, watch: Watch): Promise<boolean> {
  const signed = `${lock}-${token}`;
  const mine: Signature = { ...markOf(process.pid), token };
  await writeFile(signed, JSON.stringify(mine));
  try {
    if (await linkNew(signed, lock)) return true;
    const holder = await readSignature(lock);
    if (holder === null || !(await isGone(lock, holder, watch))) return false;
    return await takeOver(lock, signed, holder);
  } finally {
    await rm(signed, { force: true });
  }
}

/** Removes what processes that were killed while they took this lock have left beside it. */
async function clearSigned(lock: string): Promise<void> {
  for (const name of await readdir(dirname(lock))) {
    if (!name.startsWith(`${basename(lock)}-`)) continue;
    const left = join(dirname(lock), name);
    const holder = await readSignature(left);
    if (holder !== null && presenceOf(holder) === 'gone') await rm(left, { force: true });
  }
}

/** Runs work while holding a lock file, after waiting for whoever holds it; `onWait` is called once when there is a wait. */
export async function oneAtATime<T>(lock: string, onWait: () => void, work: () => Promise<T>): Promise<T> {
  await mkdir(dirname(lock), { recursive: true });
  const token = randomUUID();
  const watch: Watch = { token: '', touched: 0, looks: 0 };
  for (let waited = false; !(await take(lock, token, watch)); waited = true) {
    if (!waited) onWait();
    await pause(lookAgainMs);
  }
  const beat = new Worker(beating, { eval: true, execArgv: [], workerData: { lock, token, beatMs } });
  beat.unref();
  // A machine too full for a thread: others still know this process by its mark.
  beat.on('error', () => undefined);
  try {
    await clearSigned(lock);
    return await work();
  } finally {
    await beat.terminate();
    // Not the lock of somebody who has taken this process for gone.
    if ((await readSignature(lock))?.token === token) await rm(lock, { force: true });
  }
}
