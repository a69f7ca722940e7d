/** Kills builds at random moments, and the process that swaps, and looks whether a whole site and a whole list of addresses are in place each time. */

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { WORTH_WORKERS } from '../../src/build/pool.ts';
import { clearLeftovers } from '../../src/build/siteFolders.ts';
import { randomFromText } from '../../src/core/random.ts';
import { buildScript, buildYard, fingerprintOf, smallYardDay, writeSmallYard } from '../publish/smallYard.ts';

/** What is killed: a build and all it has started, wherever it is; the swapping process and its build; a build whose site has just been put in place. */
const victims = ['build', 'swap', 'list'] as const;
type Victim = (typeof victims)[number];

export interface Kills {
  /** Builds that were killed, by what was aimed at, each at a moment of its own. */
  killed: Record<Victim, number>;
  /** Of all these, those that had put their site in place before. */
  published: number;
  /** Times at which the place was empty, and the next command had to put the site back. */
  putBack: number;
  /** Times at which no whole site was in place, then at the latest. */
  broken: number;
  /** Times at which the list of addresses was neither the one before nor the one after. */
  brokenLists: number;
  /** What was left beside the site and the list after a last build that nobody killed. */
  left: string[];
}

/** Carrying unchanged pages over, printing them, and making everything anew. */
const ways: readonly string[][] = [[], ['--afresh']];
/** Enough for workers to be started. */
const lots = WORTH_WORKERS;

/** Parts of the time a build takes: every second build is killed in its last part, in which the site is swapped in, and some come to their end. */
const aroundSwap = 0.75;
const latest = 1.1;

/** A swap that is under way when its build is killed ends within this time, ms. */
const settleMs = 150;
/** From its start, a swapping process takes about this long to start up, to rename twice and to remove the old site, ms. */
const swapMs = 160;
/** Between putting the site in place and the end of a build, ms. */
const listMs = 12;
const pollMs = 1;

/** Number of the process that swaps a site into a place, while there is one. */
function swapperOf(out: string): number | null {
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0');
      if (words.includes(out) && words.some(word => word.endsWith('swapFolders.ts'))) return Number(name);
    } catch {
      // It has just ended.
    }
  }
  return null;
}

function kill(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has just come to its end.
  }
}

/** Kills a build with all that belongs to it but the swapping process, which is started apart. */
async function killAll(children: readonly ChildProcess[]): Promise<void> {
  for (const child of children) {
    if (child.exitCode !== null) continue;
    const gone = once(child, 'exit');
    kill(-child.pid!);
    await gone;
  }
}

const folderId = (folder: string) => (existsSync(folder) ? statSync(folder).ino : 0);

/** Waits until something holds, or a build has ended before. */
async function until(holds: () => boolean, child: ChildProcess): Promise<void> {
  while (!holds() && child.exitCode === null) await pause(pollMs);
}

/**
 * Builds a yard over and over with other counts and a list that lacks some of its addresses, in each of the ways there are in turn, two builds at
 * once every fourth time, and kills what is to be killed at seeded moments. A site is whole when its files are, byte for byte, those of one
 * finished build; a list, when it is the one before or the one after.
 */
export async function killBuilds(scratch: string, times: number, seed: number): Promise<Kills> {
  const random = randomFromText(`kills ${seed}`);
  const content = join(scratch, 'content');
  const out = join(scratch, 'dist');
  const apart = join(scratch, 'apart');
  rmSync(scratch, { recursive: true, force: true });
  mkdirSync(scratch, { recursive: true });
  writeSmallYard(content, lots);
  const walk = join(content, 'walks/2026-11-18.csv');
  const list = join(content, 'addresses.csv');
  const counted = readFileSync(walk, 'utf8');

  /** The two contents that are published in turn, and what whole sites of them look like. */
  const contents = [counted, counted.replace(/^(m\d+),(\d+),/m, '$1,0,')];
  const whole: string[] = [];
  const timed = (to: string, text: string, words: readonly string[]): number => {
    writeFileSync(walk, text);
    const started = performance.now();
    const { status, stderr } = buildYard(content, to, ...words);
    if (status !== 0) throw new Error(`the yard made for killing does not build: ${stderr}`);
    return performance.now() - started;
  };
  timed(out, contents[0]!, []);
  const listBefore = readFileSync(list, 'utf8').replace(/^\/cultivars\/.*\n/gm, '');
  // What the feed has told so far is part of every site, so each build starts from the same.
  const told = join(content, 'changes.jsonl');
  const toldBefore = readFileSync(told, 'utf8');
  const asBefore = () => {
    writeFileSync(list, listBefore);
    writeFileSync(told, toldBefore);
  };
  for (const text of contents) {
    asBefore();
    timed(apart, text, ['--afresh']);
    whole.push(JSON.stringify(fingerprintOf(apart)));
  }
  const lists = [listBefore, readFileSync(list, 'utf8')];
  if (lists[0] === lists[1]) throw new Error('the list made for killing lacks nothing');
  const usualMs = ways.map((words, at) => {
    asBefore();
    return timed(out, contents[(at + 1) % contents.length]!, words);
  });

  const result: Kills = {
    killed: { build: 0, swap: 0, list: 0 },
    published: 0,
    putBack: 0,
    broken: 0,
    brokenLists: 0,
    left: [],
  };
  const standingNow = () => (existsSync(out) ? whole.indexOf(JSON.stringify(fingerprintOf(out))) : -1);
  let standing = standingNow();
  for (let round = 0; round < times; round += 1) {
    const next = 1 - standing;
    writeFileSync(walk, contents[next]!);
    asBefore();
    const victim = victims[round % victims.length]!;
    // Only Linux tells what a process was started with.
    const aim = victim === 'swap' && !existsSync('/proc/self/cmdline') ? 'build' : victim;
    const way = aim === 'build' ? Math.floor(round / victims.length) % ways.length : 0;
    const env = { ...process.env, CONTENT_DIR: content, OUT_DIR: out, AS_OF: smallYardDay };
    const pair = aim === 'build' && round % 4 === 3 ? [0, 1] : [0];
    const id = folderId(out);
    const children = pair.map(() =>
      spawn(process.execPath, [buildScript, ...ways[way]!], { env, detached: true, stdio: 'ignore' }),
    );
    if (aim === 'build') {
      const from = round % 2 === 0 ? 0 : aroundSwap;
      await pause((from + random.uniform() * (latest - from)) * usualMs[way]!);
    } else if (aim === 'swap') {
      let swapper: number | null = null;
      const isSwapping = () => {
        swapper = swapperOf(out);
        return swapper !== null;
      };
      await until(isSwapping, children[0]!);
      await pause(random.uniform() * swapMs);
      if (swapper !== null) kill(swapper);
    } else {
      await until(() => folderId(out) !== id, children[0]!);
      await pause(random.uniform() * listMs);
    }
    await killAll(children);
    await pause(settleMs);
    result.killed[aim] += 1;
    if (!lists.includes(readFileSync(list, 'utf8'))) result.brokenLists += 1;
    if (!existsSync(out)) {
      // As every command does first of all.
      clearLeftovers(out);
      result.putBack += 1;
    }
    const found = standingNow();
    if (found === -1) result.broken += 1;
    if (found === next) result.published += 1;
    if (found !== -1) standing = found;
  }
  timed(out, contents[0]!, []);
  // The site of before is removed while the build that replaced it ends.
  for (
    let waits = 0;
    waits < 200 && readdirSync(dirname(out)).some(name => name.startsWith('.dist-gone'));
    waits += 1
  )
    await pause(settleMs);
  const aside = (folder: string) => readdirSync(folder).filter(name => name.startsWith('.'));
  result.left = [...aside(dirname(out)), ...aside(content)];
  return result;
}
