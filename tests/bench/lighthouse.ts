/** Lighthouse over five pages of the demonstration yard, served as a static host serves them, against the budgets of this project. */

import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { browserFile } from '../site/browser.ts';
import { median } from './measure.ts';
import { host } from './staticHost.ts';

const root = resolve(import.meta.dirname, '../..');
const apart = join(root, 'tests/lighthouse');

interface Audit {
  performance: number;
  accessibility: number;
  bestPractices: number;
  seo: number;
  lcpMs: number;
  cls: number;
  tbtMs: number;
  findings: string[];
}

type Figure = Exclude<keyof Audit, 'findings'>;

/** Budgets of this project, the middle of all runs: at least, or at most. */
const budgets: readonly { figure: Figure; name: string; least?: number; most?: number; digits?: number }[] = [
  { figure: 'performance', name: 'performance', least: 98 },
  { figure: 'accessibility', name: 'accessibility', least: 100 },
  { figure: 'bestPractices', name: 'best practices', least: 100 },
  { figure: 'seo', name: 'SEO', least: 100 },
  { figure: 'lcpMs', name: 'LCP ms', most: 1200 },
  { figure: 'cls', name: 'CLS', most: 0, digits: 3 },
  { figure: 'tbtMs', name: 'TBT ms', most: 50 },
];

/** Packages apart from the project's own, by their own lock. */
function install(): void {
  if (existsSync(join(apart, 'node_modules/lighthouse'))) return;
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const ran = spawnSync(npm, ['ci', '--no-audit', '--no-fund'], { cwd: apart, encoding: 'utf8' });
  if (ran.status !== 0) throw new Error(`Lighthouse could not be installed:\n${ran.stderr}`);
}

function build(out: string): void {
  const env = { ...process.env, OUT_DIR: out, CONTENT_DIR: join(root, 'content'), BASE_PATH: '/' };
  const ran = spawnSync(process.execPath, [join(root, 'scripts/build.ts')], {
    cwd: root,
    encoding: 'utf8',
    env,
  });
  if (ran.status !== 0) throw new Error(`the demonstration yard does not build:\n${ran.stderr}`);
}

/** Home, list, lot, guide, place. */
function pagesIn(out: string): string[] {
  const first = (part: string) =>
    `${part}/${readdirSync(join(out, part), { withFileTypes: true }).find(entry => entry.isDirectory())!.name}/`;
  return ['', 'stock/', first('lots'), first('guides'), first('places')];
}

/** A process apart, so that this one is free to serve the pages meanwhile. */
async function audit(addresses: readonly string[]): Promise<Audit[]> {
  const child = spawn(process.execPath, [join(apart, 'audit.mjs'), await browserFile(), ...addresses], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  for await (const part of child.stdout.setEncoding('utf8')) text += part;
  const lines = text.split('\n').filter(line => line.startsWith('{'));
  if (lines.length !== addresses.length) throw new Error('Lighthouse ended before its last page.');
  return lines.map(line => JSON.parse(line) as Audit);
}

/**
 * Builds the demonstration yard below `scratch`, prints a table of the middle of `repeats` runs, and tells whether all budgets are met.
 * Times are simulated from what was loaded, but a busy machine still shows in them: repeat before believing a miss.
 */
export async function benchLighthouse(
  scratch: string,
  repeats: number,
  print: (line: string) => void,
): Promise<boolean> {
  install();
  const out = join(scratch, 'lighthouse');
  build(out);
  const pages = pagesIn(out);
  const site = await host(out);
  const runs: Audit[][] = [];
  try {
    for (let run = 0; run < repeats; run += 1) runs.push(await audit(pages.map(page => site.address + page)));
  } finally {
    site.stop();
  }
  rmSync(out, { recursive: true, force: true });
  const misses: string[] = [];
  print(`page | ${budgets.map(({ name }) => name).join(' | ')}`);
  for (const [index, page] of pages.entries()) {
    const cells = budgets.map(({ figure, name, least = -Infinity, most = Infinity, digits = 0 }) => {
      const value = median(runs.map(run => run[index]![figure]));
      const shown = value.toFixed(digits);
      if (value < least || value > most) misses.push(`${page || 'home'}: ${name} ${shown}`);
      return shown;
    });
    print(`${page || 'home'} | ${cells.join(' | ')}`);
    for (const finding of new Set(runs.flatMap(run => run[index]!.findings))) print(`  ${finding}`);
  }
  print(misses.length === 0 ? 'All within budget.' : `Missed: ${misses.join('; ')}`);
  return misses.length === 0;
}
