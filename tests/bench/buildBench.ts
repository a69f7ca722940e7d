/** Builds of a large yard and of the demonstration yard: whole, after one sale, and where nothing has changed. Pairs in turn on one machine. */

import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { writeBareSite } from './bareSite.ts';
import { measured, median, ratioInWords, type Usage } from './measure.ts';

interface BuildBench {
  root: string;
  /** Emptied by whoever asks. */
  scratch: string;
  repeats: number;
  print: (line: string) => void;
}

interface LargeYardBench extends BuildBench {
  content: string;
  /** A day, YYYY-MM-DD. */
  asOf: string;
  lots: number;
}

/** Sizes of the pages the generator renders; the small ones that send readers on are left out. */
function pageSizes(folder: string): number[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && entry.name.endsWith('.html') && !entry.parentPath.includes('/go/'))
    .map(entry => statSync(join(entry.parentPath, entry.name)).size);
}

/** Counts one tree of one lot less on the last walk, as a sale does. */
function sellOne(content: string): void {
  const walks = readdirSync(join(content, 'walks')).filter(name => name.endsWith('.csv'));
  const walk = join(content, 'walks', walks.sort().at(-1)!);
  const before = readFileSync(walk, 'utf8');
  const after = before.replace(/^([\w-]+),([1-9]\d*),/m, (_, lot, left) => `${lot},${Number(left) - 1},`);
  if (after === before) throw new Error(`everything is sold on ${walk}`);
  writeFileSync(walk, after);
}

function builderOf(root: string, env: Record<string, string>): (...words: string[]) => Usage {
  // With the flags that the launcher has started this command with, as it starts a build.
  return (...words) => measured(join(root, 'scripts/build.ts'), words, root, env, process.execArgv);
}

const seconds = (values: readonly number[]) => `${median(values).toFixed(1)} s`;
const wall = ({ wallSeconds }: Usage) => wallSeconds;
const cpu = ({ cpuSeconds }: Usage) => cpuSeconds;

/** Each of some builds beside the one of its round. */
function pairsOf(ours: readonly Usage[], plain: readonly Usage[], of: (usage: Usage) => number) {
  return ours.map((each, round) => ({ ours: of(each), plain: of(plain[round]!) }));
}

/** Our build against the generator alone writing as many pages of the same sizes; a sale, and nothing, against a whole build. */
export function benchBuild({ root, scratch, content, asOf, lots, repeats, print }: LargeYardBench): void {
  const out = join(scratch, 'out');
  const bare = join(scratch, 'bare');
  const astro = join(root, 'node_modules/astro/bin/astro.mjs');
  const build = builderOf(root, { CONTENT_DIR: content, OUT_DIR: out, AS_OF: asOf });
  const whole: Usage[] = [];
  const generator: Usage[] = [];
  const sale: Usage[] = [];
  const nothing: Usage[] = [];
  const loads: number[] = [];
  // Works out what every later build finds kept: the climates of places and their weather years, which no yard works out twice.
  build();
  for (let round = 0; round < repeats; round += 1) {
    loads.push(loadavg()[0]!);
    rmSync(out, { recursive: true });
    whole.push(build());
    if (round === 0) {
      const sizes = pageSizes(out);
      writeBareSite(bare, sizes);
      print(`${sizes.length} pages, ${(sizes.reduce((a, b) => a + b, 0) / 1e6).toFixed(1)} MB of HTML`);
    }
    generator.push(measured(astro, ['build'], bare, {}));
    sellOne(content);
    sale.push(build());
    nothing.push(build());
  }
  const bareBytes = pageSizes(join(bare, 'dist')).reduce((a, b) => a + b, 0);
  print(`bare pages come to ${(bareBytes / 1e6).toFixed(1)} MB`);
  print(`load of the machine before each round: ${loads.map(load => load.toFixed(1)).join(', ')}`);
  print(`build / bare generator, wall: ${ratioInWords(pairsOf(whole, generator, wall))}`);
  print(`build / bare generator, CPU: ${ratioInWords(pairsOf(whole, generator, cpu))}`);
  for (const [what, builds] of [
    ['whole build', whole],
    ['one changed lot', sale],
    ['nothing changed', nothing],
  ] as const) {
    const used = `${seconds(builds.map(wall))} wall, ${seconds(builds.map(cpu))} CPU`;
    const perLot = (median(builds.map(wall)) / lots) * 1000;
    print(`${what}: ${used}, ${perLot.toFixed(2)} ms wall a lot`);
    if (builds === whole) continue;
    print(`${what} / whole build, wall: ${ratioInWords(pairsOf(builds, whole, wall))}`);
    print(`${what} / whole build, CPU: ${ratioInWords(pairsOf(builds, whole, cpu))}`);
  }
  const most = (of: (usage: Usage) => number, builds: readonly Usage[]) =>
    Math.max(...builds.map(of)).toFixed(0);
  const ours = [...whole, ...sale, ...nothing];
  print(
    `peak memory: ${most(each => each.peakMegabytes, ours)} MB in the largest process, ${most(each => each.peaksMegabytes, ours)} MB in all; bare generator ${most(each => each.peakMegabytes, generator)} MB`,
  );
}

/** The demonstration yard on its own day: everything but photographs and climates, which are kept, then one sold tree. */
export function benchDemonstration({ root, scratch, repeats, print }: BuildBench): void {
  const content = join(scratch, 'content');
  const out = join(scratch, 'out');
  mkdirSync(scratch, { recursive: true });
  cpSync(join(root, 'content'), content, { recursive: true });
  const build = builderOf(root, { CONTENT_DIR: content, OUT_DIR: out });
  build();
  const whole: Usage[] = [];
  const sale: Usage[] = [];
  for (let round = 0; round < repeats; round += 1) {
    rmSync(out, { recursive: true });
    whole.push(build());
    sellOne(content);
    sale.push(build());
  }
  print(`demonstration yard, whole build: ${seconds(whole.map(cpu))} CPU, ${seconds(whole.map(wall))} wall`);
  print(`demonstration yard, one sold tree: ${seconds(sale.map(cpu))} CPU, ${seconds(sale.map(wall))} wall`);
}
