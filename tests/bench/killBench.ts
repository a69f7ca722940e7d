/** Kills builds at random moments and looks whether a whole site is in place each time. */

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { randomFromText } from '../../src/core/random.ts';
import { PRINTED_FROM } from '../../src/views/printed.ts';
import { buildScript, buildYard, fingerprintOf, smallYardDay, writeSmallYard } from '../publish/smallYard.ts';

export interface Kills {
  /** Builds that were killed, each at a moment of its own. */
  killed: number;
  /** Of these, those that had put their site in place before. */
  published: number;
  /** Times at which no whole site was in place. */
  broken: number;
}

/** Carrying unchanged pages over, printing them, and making everything anew. */
const ways: readonly string[][] = [[], ['--press'], ['--afresh']];

/** Parts of the time a build takes: every second build is killed in its last part, in which the site is swapped in, and some come to their end. */
const aroundSwap = 0.75;
const latest = 1.1;

/** A swap that is under way when its build is killed ends within this time, ms. */
const settleMs = 150;

/**
 * Builds a yard over and over with other counts, in each of the ways there are in turn, two builds at once every fourth time, and kills them at
 * seeded moments, over all of the time such a build takes or around its end. A site is whole when its files are, byte for byte, those of one finished build.
 */
export async function killBuilds(scratch: string, times: number, seed: number): Promise<Kills> {
  const random = randomFromText(`kills ${seed}`);
  const content = join(scratch, 'content');
  const out = join(scratch, 'dist');
  const apart = join(scratch, 'apart');
  rmSync(scratch, { recursive: true, force: true });
  mkdirSync(scratch, { recursive: true });
  // As many lots as it takes for unchanged pages to be carried over.
  writeSmallYard(content, PRINTED_FROM);
  const walk = join(content, 'walks/2026-11-18.csv');
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
  for (const text of contents) {
    timed(apart, text, ['--afresh']);
    whole.push(JSON.stringify(fingerprintOf(apart)));
  }
  timed(out, contents[0]!, []);
  const usualMs = ways.map((words, at) => timed(out, contents[(at + 1) % contents.length]!, words));

  const result: Kills = { killed: 0, published: 0, broken: 0 };
  let standing = whole.indexOf(JSON.stringify(fingerprintOf(out)));
  for (let round = 0; round < times; round += 1) {
    const next = 1 - standing;
    writeFileSync(walk, contents[next]!);
    const env = { ...process.env, CONTENT_DIR: content, OUT_DIR: out, AS_OF: smallYardDay };
    const way = round % ways.length;
    const children = (round % 4 === 3 ? [0, 1] : [0]).map(() =>
      spawn(process.execPath, [buildScript, ...ways[way]!], { env, detached: true, stdio: 'ignore' }),
    );
    const from = round % 2 === 0 ? 0 : aroundSwap;
    await pause((from + random.uniform() * (latest - from)) * usualMs[way]!);
    for (const child of children) {
      if (child.exitCode !== null) continue;
      const gone = once(child, 'exit');
      try {
        process.kill(-child.pid!, 'SIGKILL');
      } catch {
        // It has just come to its end.
      }
      await gone;
    }
    await pause(settleMs);
    result.killed += 1;
    const found = existsSync(out) ? whole.indexOf(JSON.stringify(fingerprintOf(out))) : -1;
    if (found === -1) result.broken += 1;
    if (found === next) result.published += 1;
    if (found !== -1) standing = found;
  }
  return result;
}
