/** A small yard that builds in a few seconds, and running the build command on it. */

import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { makeYard } from '../bench/makeYard.ts';

const root = resolve(import.meta.dirname, '../..');
/** The home place of the settings used, one much colder and one without winter. */
const places = ['asheville-nc.yaml', 'minneapolis-mn.yaml', 'miami-fl.yaml'];

/** Writes a yard of 30 lots, if nothing else is said, and 8 cultivars in three places, with the guides of the demonstration yard. */
export function writeSmallYard(folder: string, lots = 30): void {
  mkdirSync(folder, { recursive: true });
  const demo = join(root, 'content');
  makeYard(folder, demo, { lots, cultivars: 8 }, 1);
  cpSync(join(demo, 'guides'), join(folder, 'guides'), { recursive: true });
  for (const name of readdirSync(join(folder, 'places'))) {
    if (!places.includes(name)) rmSync(join(folder, 'places', name));
  }
}

export const smallYardDay = '2026-11-25';
export const buildScript = join(root, 'scripts/build.ts');

/** Builds a yard and returns what the command said. */
export function buildYard(content: string, out: string, ...words: string[]) {
  return spawnSync(process.execPath, [buildScript, ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, CONTENT_DIR: content, OUT_DIR: out, AS_OF: process.env.AS_OF ?? smallYardDay },
  });
}

/** Costs in files that are not private are told on every build of these yards. */
const costsInPublic = /^Good to know:\n[^\n]* private-in-public: [^\n]*\n\n0 errors, 0 warnings\n+/;

/** What a build said besides that costs stand in public files. */
export function complaintsIn(stderr: string): string {
  return stderr.replace(costsInPublic, '');
}

/** Hash of the bytes of every file of a folder, by its path. */
export function fingerprintOf(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name))
    .sort();
  return Object.fromEntries(
    files.map(path => [
      relative(folder, path).replaceAll(sep, '/'),
      createHash('sha256').update(readFileSync(path)).digest('hex'),
    ]),
  );
}
