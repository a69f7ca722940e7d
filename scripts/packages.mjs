/**
 * Which installed packages are not those of package-lock.json, and the npm words that mend it. Plain JavaScript for any Node from 20 up,
 * because it runs before anything is installed.
 */

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** npm writes this list of what it has installed as its last step, so it is missing where an install was cut off. */
const installedList = 'node_modules/.package-lock.json';
/** Builds for this machine that npm could not get and left out without an error. `npm ci` removes the file with the rest. */
const leftOutList = 'node_modules/.leafdrop-left-out';

/** Value of a JSON file; null where there is none or it is cut short. */
function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}

/** Whether a list of package.json's `os`, `cpu` or `libc`, which may hold exclusions such as "!win32", allows a value. */
function allows(list, value) {
  if (list === undefined) return true;
  const names = [list].flat();
  if (names.includes('any') || names.includes(value)) return true;
  return names.every(name => name.startsWith('!') && name !== `!${value}`);
}

/** The C library of this machine, as npm names them. Asked for only where it matters, since the answer takes 30 ms. */
function libcOfMachine() {
  process.report.excludeNetwork = true;
  return process.report.getReport().header.glibcVersionRuntime ? 'glibc' : 'musl';
}

/**
 * The wanted packages, by their folder. Packages of the tests only where asked for. Of optional packages those built for this machine
 * alone: npm leaves the others out as it sees fit.
 */
function wantedHere(locked, installed, { withTests, platform, arch }) {
  const libc = Object.values(installed ?? {}).flatMap(entry => entry.libc ?? [])[0];
  const runsHere = entry =>
    (entry.os !== undefined || entry.cpu !== undefined) &&
    allows(entry.os, platform) &&
    allows(entry.cpu, arch) &&
    (entry.libc === undefined || allows(entry.libc, libc ?? libcOfMachine()));
  return Object.entries(locked).filter(
    ([folder, entry]) => folder !== '' && (withTests || !entry.dev) && (!entry.optional || runsHere(entry)),
  );
}

/**
 * What is missing of a project's packages: `missing` holds their folders, below `root`, and `canAdd` tells whether npm may add them to
 * those that are there. It may not where a part of one is there already, as after an install that was cut off: npm would take it for
 * whole.
 *
 * @param {string} root folder of the project
 * @param {{ withTests: boolean, platform: string, arch: string }} asked what is needed, and by which machine (names as in `process`)
 * @returns {{ missing: string[], canAdd: boolean, testsInstalled: boolean }}
 */
export function comparePackages(root, asked) {
  const locked = readJson(join(root, 'package-lock.json'))?.packages;
  if (!locked) throw new Error('package-lock.json is missing or damaged; get it back from the repository.');
  const installed = readJson(join(root, installedList))?.packages;
  const leftOut = new Set(readJson(join(root, leftOutList)) ?? []);
  const isWhole = (folder, { bin, link }) =>
    link || ['package.json', ...Object.values(bin ?? {})].every(file => existsSync(join(root, folder, file)));
  const missing = wantedHere(locked, installed, asked)
    .filter(([folder, entry]) => {
      if (leftOut.has(`${folder} ${entry.version}`)) return false;
      const there = installed?.[folder];
      const same = there?.version === entry.version && there?.integrity === entry.integrity;
      return !same || !isWhole(folder, entry);
    })
    .map(([folder]) => folder);
  return {
    missing,
    canAdd: installed !== undefined && !missing.some(folder => existsSync(join(root, folder))),
    testsInstalled: Object.values(installed ?? {}).some(entry => entry.dev),
  };
}

/**
 * The words npm is called with to get what is missing. Packages are added where that is safe, so that nothing is taken away from a
 * command that runs meanwhile; otherwise all are installed from scratch.
 *
 * @param {{ canAdd: boolean, testsInstalled: boolean }} state as `comparePackages` found it
 * @param {boolean} withTests whether what only the tests need is wanted
 */
export function npmWords({ canAdd, testsInstalled }, withTests) {
  return [
    ...(canAdd ? ['install', '--no-save'] : ['ci']),
    // A setting of the machine or NODE_ENV=production would leave them out. Who has the packages of the tests keeps them.
    ...(withTests || testsInstalled ? ['--include=dev'] : ['--omit=dev']),
    '--include=optional',
    '--no-audit',
    '--no-fund',
    '--loglevel=error',
  ];
}

/**
 * Sorts what is still missing after npm has said that all went well. Optional packages are remembered as left out, so that the next
 * command does not install again.
 *
 * @param {string} root folder of the project
 * @param {string[]} missing folders of packages
 * @param {string[]} indispensable folders of optional packages that this machine cannot do without
 * @returns {{ leftOut: string[], stillMissing: string[] }}
 */
export function acceptLeftOut(root, missing, indispensable) {
  const locked = readJson(join(root, 'package-lock.json')).packages;
  const leftOut = missing.filter(folder => locked[folder].optional && !indispensable.includes(folder));
  if (leftOut.length > 0) {
    mkdirSync(join(root, 'node_modules'), { recursive: true });
    const known = readJson(join(root, leftOutList)) ?? [];
    const lines = [...known, ...leftOut.map(folder => `${folder} ${locked[folder].version}`)];
    writeFileSync(join(root, leftOutList), `${JSON.stringify(lines, null, 1)}\n`);
  }
  return { leftOut, stillMissing: missing.filter(folder => !leftOut.includes(folder)) };
}
