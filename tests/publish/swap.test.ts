/** Putting a finished site in place: whatever is killed and whenever, a whole site is there. */

import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { clearLeftovers } from '../../src/build/siteFolders.ts';
import { writeMark } from '../../src/build/siteMark.ts';
import { randomFromText } from '../../src/core/random.ts';
import { killPublications } from '../bench/publishKills.ts';
import { fingerprintOf } from './smallYard.ts';

const module = resolve(import.meta.dirname, '../../src/build/siteFolders.ts');
const random = randomFromText('swap');
const files = 12;

let scratch: string;
let out: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-swap-'));
  out = join(scratch, 'dist');
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function writeSite(folder: string, version: number): Record<string, string> {
  mkdirSync(folder, { recursive: true });
  writeMark(folder, { yard: 'Bench', address: null });
  for (let index = 0; index < files; index += 1)
    writeFileSync(join(folder, `${index}.html`), `version ${version}`);
  return fingerprintOf(folder);
}

/** Starts a process that swaps, and kills it and its group after a while. */
async function swapAndKill(finished: string, afterMs: number): Promise<void> {
  const program = `const { swapIn } = await import(${JSON.stringify(module)}); process.stdout.write('x'); await swapIn(${JSON.stringify(finished)}, ${JSON.stringify(out)});`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', program], { detached: true });
  await once(child.stdout, 'data');
  await pause(afterMs);
  try {
    process.kill(-child.pid!, 'SIGKILL');
  } catch {
    // It was done.
  }
  if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
}

/** Whether a process of this machine was started with a word. */
function isAtWork(word: string): boolean {
  return spawnSync('ps', ['-eo', 'args'], { encoding: 'utf8' }).stdout.includes(word);
}

/** Most rounds tried until kills fell on both sides of the swap; a handful is usual. */
const mostRounds = 60;

describe('the swap', () => {
  it('leaves the one site or the other, whole, whenever it is killed', async () => {
    let present = writeSite(out, 0);
    let before = 0;
    let after = 0;
    // Where the swap happens depends on the machine, so the moment follows it: later after a kill that came before it, and the other way.
    let momentMs = 20;
    for (let round = 1; round <= mostRounds && (round <= 12 || before === 0 || after === 0); round += 1) {
      const finished = join(scratch, `finished-${round}`);
      const next = writeSite(finished, round);
      await swapAndKill(finished, momentMs * 2 * random.uniform());
      // What was started apart from the killed process comes to its end on its own; where it was killed before that, nothing comes.
      while (isAtWork(finished)) await pause(10);
      const found = fingerprintOf(out);
      expect([present, next]).toContainEqual(found);
      const isSwapped = found['0.html'] === next['0.html'];
      if (isSwapped) after += 1;
      else before += 1;
      momentMs *= isSwapped ? 0.8 : 1.5;
      present = found;
      clearLeftovers(out);
    }
    // Both happened, so the moments were well spread.
    expect(before).toBeGreaterThan(0);
    expect(after).toBeGreaterThan(0);
  });

  it('and the list of addresses with it, when the process that swaps is killed too; nothing is left beside them', async () => {
    const folder = join(scratch, 'publications');
    const { killed, broken, left } = await killPublications(folder, 24, 3);
    rmSync(folder, { recursive: true, force: true });
    expect({ killed, broken, left }).toEqual({ killed: 24, broken: 0, left: [] });
  });

  it('puts back the site that was there when the power went between the two steps', async () => {
    clearLeftovers(out);
    rmSync(out, { recursive: true, force: true });
    // No process has this number: it is above the largest that Linux gives.
    const old = join(scratch, '.dist-old-4194305');
    const site = writeSite(old, 77);
    mkdirSync(join(scratch, '.dist-building-4194305'));
    clearLeftovers(out);
    expect(fingerprintOf(out)).toEqual(site);
    expect(readdirSync(scratch).filter(name => name.startsWith('.dist'))).toEqual([]);
  });

  it('clears what it left itself and nothing else', () => {
    rmSync(out, { recursive: true, force: true });
    const own = join(scratch, '.dist-building-4194305-99');
    writeSite(own, 1);
    // Of a process that has this one's number and was started at another time.
    const numbered = join(scratch, `.dist-old-${process.pid}-1`);
    const site = writeSite(numbered, 2);
    const foreign = join(scratch, '.dist-old-4194305-7');
    mkdirSync(foreign);
    writeFileSync(join(foreign, 'thesis.doc'), 'words');
    const working = join(scratch, '.dist-building-1');
    writeSite(working, 3);
    clearLeftovers(out);
    expect(
      readdirSync(scratch)
        .filter(name => name.startsWith('.dist'))
        .sort(),
    ).toEqual([foreign, working].map(path => basename(path)).sort());
    expect(fingerprintOf(out)).toEqual(site);
  });
});
