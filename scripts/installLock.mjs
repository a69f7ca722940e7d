/**
 * Lets one command at a time install packages. Plain JavaScript for any Node from 20 up.
 *
 * The lock is a file that names its holder and the npm it runs. It counts as left behind once both are gone, or once nobody has touched
 * it for two minutes: the number of a process is given to another after a restart or in another container, and by itself proves nothing.
 */

import { mkdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

const lookAgainMs = 200;
const touchMs = 2000;
/** An npm whose command was killed goes on without touching the lock; that may take as long as a whole install. */
const usualUntouchedMs = 120_000;

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (problem) {
    return problem.code === 'EPERM';
  }
}

function read(path) {
  try {
    return { text: readFileSync(path, 'utf8'), touched: statSync(path).mtimeMs };
  } catch (problem) {
    if (problem.code === 'ENOENT') return null;
    throw problem;
  }
}

/** Whether all processes named in a lock have ended. A lock of another machine, or one just being written, says nothing about that. */
function holdersEnded(text) {
  try {
    const { host, pids } = JSON.parse(text);
    return host === hostname() && !pids.some(isRunning);
  } catch {
    return false;
  }
}

/**
 * Removes a lock that was left behind. Another command may have removed it and taken it anew since it was read, so it is moved aside
 * first and put back where it turns out to be another's.
 */
function removeLeftBehind(path, text) {
  const aside = `${path}-${process.pid}`;
  try {
    renameSync(path, aside);
  } catch (problem) {
    if (problem.code === 'ENOENT') return;
    throw problem;
  }
  if (read(aside)?.text === text) rmSync(aside, { force: true });
  else renameSync(aside, path);
}

/** Shows that the holder is still at it. The file may be gone for a moment while another command looks at it. */
function touch(path) {
  try {
    utimesSync(path, new Date(), new Date());
  } catch (problem) {
    if (problem.code !== 'ENOENT') throw problem;
  }
}

function take(path, text) {
  try {
    writeFileSync(path, text, { flag: 'wx' });
    return true;
  } catch (problem) {
    if (problem.code === 'EEXIST') return false;
    throw problem;
  }
}

/**
 * Runs work while holding the lock, after waiting for whoever holds it. `onWait` is called once when there is a wait. The work gets a
 * function to name a further process that must have ended before the lock counts as left behind.
 *
 * @template T
 * @param {string} path the lock file
 * @param {() => void} onWait
 * @param {(alsoRuns: (pid: number) => void) => Promise<T>} work
 * @param {{ untouchedMs?: number }} [limits] how long an untouched lock is taken for held
 * @returns {Promise<T>}
 */
export async function withInstallLock(path, onWait, work, { untouchedMs = usualUntouchedMs } = {}) {
  mkdirSync(dirname(path), { recursive: true });
  const signed = pids => JSON.stringify({ host: hostname(), pids });
  let seen = null;
  let seenSince = 0;
  for (let waited = false; !take(path, signed([process.pid])); ) {
    const found = read(path);
    if (found === null) continue;
    if (found.text !== seen?.text || found.touched !== seen?.touched) {
      seen = found;
      seenSince = performance.now();
    }
    if (holdersEnded(found.text) || performance.now() - seenSince > untouchedMs) {
      removeLeftBehind(path, found.text);
      continue;
    }
    if (!waited) onWait();
    waited = true;
    await pause(lookAgainMs);
  }
  const touching = setInterval(() => touch(path), touchMs);
  try {
    return await work(pid => writeFileSync(path, signed([process.pid, pid])));
  } finally {
    clearInterval(touching);
    rmSync(path, { force: true });
  }
}
