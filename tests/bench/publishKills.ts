/**
 * Kills the last step of a build, in which a finished site is put in place and the list of addresses after it, and the process that swaps: the
 * step alone, without the build before it, so that hundreds of kills fall into the few milliseconds that matter.
 */

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { listPath } from '../../src/build/addressList.ts';
import { clearLeftAside } from '../../src/build/leftAside.ts';
import { clearLeftovers } from '../../src/build/siteFolders.ts';
import { writeMark } from '../../src/build/siteMark.ts';
import { randomFromText } from '../../src/core/random.ts';
import { fingerprintOf } from '../publish/smallYard.ts';

const buildFolder = resolve(import.meta.dirname, '../../src/build');

export interface PublishKills {
  /** Kills of the publishing process alone, and with the process that swaps. */
  killed: number;
  swappersKilled: number;
  /** Of all these, those after which the new site was in place, and those after which the list was the new one. */
  published: number;
  listed: number;
  /** Times at which the place was empty, and the next command had to put the site back. */
  putBack: number;
  /** Times at which, then at the latest, no whole site was there, the list was neither the old nor the new one, or it was ahead of the site. */
  broken: number;
  /** What was left beside the site and the list when the next command had cleared up. */
  left: string[];
}

const files = 40;
/** From the start of a step to its end, ms, when the machine has nothing else to do: starting the swapping process takes most of it. */
const stepMs = 90;

function writeSite(folder: string, version: number): string {
  mkdirSync(folder, { recursive: true });
  writeMark(folder, { yard: 'Bench', address: null });
  for (let index = 0; index < files; index += 1)
    writeFileSync(join(folder, `${index}.html`), `version ${version} `.repeat(50));
  return JSON.stringify(fingerprintOf(folder));
}

const listText = (version: number) =>
  `address,since,leads_to\n${Array.from({ length: version + 1 }, (_, at) => `/lots/${at}/,2026-11-25,\n`).join('')}`;

/** The step as a build takes it. */
function program(finished: string, out: string, content: string, version: number): string {
  const from = (name: string) => JSON.stringify(join(buildFolder, name));
  return `
    const { swapIn } = await import(${from('siteFolders.ts')});
    const { writeNewList } = await import(${from('addressList.ts')});
    const list = await writeNewList(${JSON.stringify(content)}, { text: ${JSON.stringify(listText(version))}, added: 1 });
    process.stdout.write('begun\\n');
    await swapIn(${JSON.stringify(finished)}, ${JSON.stringify(out)});
    process.stdout.write('in place\\n');
    await list.put();`;
}

/** Kills whatever processes of this machine were started with a folder among their words. Only Linux tells. */
function killSwapper(out: string): boolean {
  for (const name of existsSync('/proc/self/cmdline') ? readdirSync('/proc') : []) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0');
      if (!words.includes(out) || !words.some(word => word.endsWith('swapFolders.ts'))) continue;
      process.kill(Number(name), 'SIGKILL');
      return true;
    } catch {
      // It has just ended.
    }
  }
  return false;
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
}

/** Waits until nobody works in the folder of a site any more: what was not killed comes to its end. */
async function settled(finished: string, scratch: string): Promise<void> {
  const isBusy = () => readdirSync(scratch).some(name => name.startsWith('.dist-gone'));
  for (let waits = 0; waits < 30 && (existsSync(finished) || isBusy()); waits += 1) await pause(10);
}

/** Publishes over and over and kills each time: every second time the swapping process too, every third time just after the site was in place. */
export async function killPublications(scratch: string, times: number, seed: number): Promise<PublishKills> {
  const random = randomFromText(`publications ${seed}`);
  const out = join(scratch, 'dist');
  const content = join(scratch, 'content');
  rmSync(scratch, { recursive: true, force: true });
  mkdirSync(content, { recursive: true });
  let sites = [writeSite(out, 0)];
  let lists = [listText(0)];
  writeFileSync(listPath(content), lists[0]!);
  const result: PublishKills = {
    killed: 0,
    swappersKilled: 0,
    published: 0,
    listed: 0,
    putBack: 0,
    broken: 0,
    left: [],
  };
  for (let round = 1; round <= times; round += 1) {
    const finished = join(scratch, `finished-${round}`);
    const next = writeSite(finished, round);
    const child = spawn(
      process.execPath,
      ['--input-type=module', '-e', program(finished, out, content, round)],
      {
        stdio: ['ignore', 'pipe', 'ignore'],
      },
    );
    await once(child.stdout, 'data');
    if (round % 3 === 0) {
      await Promise.race([once(child.stdout, 'data'), once(child, 'exit')]);
      await pause(random.uniform() * 3);
    } else await pause(random.uniform() * stepMs * 1.3);
    if (round % 2 === 0 && killSwapper(out)) result.swappersKilled += 1;
    await end(child);
    await settled(finished, scratch);
    result.killed += 1;
    const wasEmpty = !existsSync(out);
    if (wasEmpty) result.putBack += 1;
    // As every build does first of all.
    clearLeftovers(out);
    await clearLeftAside(listPath(content));
    const site = existsSync(out) ? JSON.stringify(fingerprintOf(out)) : '';
    const list = readFileSync(listPath(content), 'utf8');
    const isNew = site === next;
    const isListed = list === listText(round);
    const isSound =
      (isNew || sites.includes(site)) && (isListed || lists.includes(list)) && !(isListed && !isNew);
    if (!isSound) result.broken += 1;
    if (isNew) result.published += 1;
    if (isListed) result.listed += 1;
    sites = [site];
    lists = [list];
    rmSync(finished, { recursive: true, force: true });
  }
  const aside = (folder: string) => readdirSync(folder).filter(name => name.startsWith('.'));
  result.left = [...aside(scratch), ...aside(content)];
  return result;
}
