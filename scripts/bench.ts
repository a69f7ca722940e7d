/** `npm run bench`: measures checking and building a large yard, as ratios of paired runs on this machine. */

import { mkdirSync, rmSync } from 'node:fs';
import { loadavg } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { readContentFiles } from '../src/content.ts';
import { assemble } from '../src/core/catalogue.ts';
import { day } from '../src/core/days.ts';
import { readRecords } from '../src/core/reading/read.ts';
import { benchBuild, benchDemonstration } from '../tests/bench/buildBench.ts';
import { benchGuides } from '../tests/bench/guideBench.ts';
import { killBuilds } from '../tests/bench/killBench.ts';
import { benchLighthouse } from '../tests/bench/lighthouse.ts';
import { makeYard } from '../tests/bench/makeYard.ts';
import { cpuSecondsOf, measured, median, ratioInWords } from '../tests/bench/measure.ts';
import { pickMutants } from '../tests/bench/mutants.ts';
import { type FailedBy, survivingMutants } from '../tests/bench/mutantTrials.ts';
import { benchOwnDates } from '../tests/bench/ownDatesBench.ts';
import { benchPhotos, photoBenchLines } from '../tests/bench/photoBench.ts';
import { killPublications } from '../tests/bench/publishKills.ts';
import { benchSearch } from '../tests/bench/searchBench.ts';
import { benchTowns } from '../tests/bench/townBench.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const help = `Measures checking and building a yard made for it, and prints ratios of paired runs.

  npm run bench
  npm run bench -- --lots 5000 --cultivars 1000 --repeats 3 --seed 1
  npm run bench -- --lighthouse   pages of the demonstration yard on a phone, by Lighthouse
  npm run bench -- --search       the search page of 1500 lots and 1000 cultivars, in the browser, for a letter typed or a choice ticked
  npm run bench -- --own-dates    the trees for a visitor's own freeze dates, on a slow telephone, in the demonstration yard
  npm run bench -- --towns        the answers for a town that is taken, on a slow telephone, in the demonstration yard
  npm run bench -- --kills 200        kills so many builds of a small yard and looks whether a whole site stands each time
  npm run bench -- --mutants src/core/match --seed 1   tries 40 small changes to a folder of the core, one by one, and tells those no test of the core fails
  npm run bench -- --publish-kills 300  kills only the last step, in which a site and its list are put in place, and the process that swaps
`;

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const scratch = join(root, '.build/bench');
const asOf = '2026-11-25';

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

function wholeNumber(text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1) throw new UsageError(`"${text}" is no whole number from 1 up.`);
  return value;
}

/** Check against plain parsing: the same bytes, in one process, in turn. */
async function benchCheck(content: string, repeats: number): Promise<void> {
  const { files, photos } = await readContentFiles(content);
  const decoder = new TextDecoder();
  const yamlTexts = files.flatMap(({ path, bytes }) => {
    const text = decoder.decode(bytes);
    if (path.endsWith('.yaml')) return [text];
    return path.endsWith('.md') ? [text.slice(4, text.indexOf('\n---', 4) + 1)] : [];
  });
  const pairs = [];
  const assembling = [];
  for (let run = -1; run < repeats; run += 1) {
    const plain = cpuSecondsOf(() => {
      for (const text of yamlTexts) parse(text);
    });
    let records: ReturnType<typeof readRecords>['records'] = null;
    // Bytes that were read before are not read again.
    const unread = files.map(file => ({ ...file, bytes: file.bytes.slice() }));
    const ours = cpuSecondsOf(() => {
      records = readRecords(unread, { asOf: day(asOf), photos }).records;
    });
    if (records === null) throw new Error('the yard made for measuring has errors');
    const computing = cpuSecondsOf(() => assemble(records!, day(asOf), new Map()));
    // The first pair warms the machine code up and is not counted.
    if (run < 0) continue;
    pairs.push({ ours, plain });
    assembling.push(computing);
  }
  print(
    `check / plain YAML parsing of the same files, CPU: ${ratioInWords(pairs)}; check ${median(pairs.map(pair => pair.ours)).toFixed(2)} s`,
  );
  print(`computing the catalogue: ${median(assembling).toFixed(2)} s CPU`);
}

async function benchKills(times: number, seed: number): Promise<number> {
  const folder = join(root, '.build/kills');
  const { killed, published, putBack, broken, brokenLists, left } = await killBuilds(folder, times, seed);
  rmSync(folder, { recursive: true, force: true });
  const { build, swap, list } = killed;
  print(
    `${build + swap + list} builds killed: ${build} at any moment, ${swap} with the process that swaps, ${list} just after their site was in place`,
  );
  print(
    `${published} had their site in place; ${putBack} left the place empty, and the next command put the site back`,
  );
  print(
    `broken sites: ${broken}; broken lists of addresses: ${brokenLists}; left behind: ${left.join(', ') || 'nothing'}`,
  );
  return broken + brokenLists + left.length === 0 ? 0 : 1;
}

async function benchPublishKills(times: number, seed: number): Promise<number> {
  const folder = join(root, '.build/publish-kills');
  const { killed, swappersKilled, published, listed, putBack, broken, left } = await killPublications(
    folder,
    times,
    seed,
  );
  rmSync(folder, { recursive: true, force: true });
  print(`${killed} publications killed, ${swappersKilled} of them with the process that swaps`);
  print(`${published} had their site in place, ${listed} their list`);
  print(`${putBack} left the place empty, and the next command put the site back`);
  print(`broken: ${broken}; left behind: ${left.join(', ') || 'nothing'}`);
  return broken + left.length === 0 ? 0 : 1;
}

const MUTANTS = 40;
/** What tests should fail of, of these changes: some change nothing that can be seen. */
const SHARE_TO_FAIL = 0.8;

function benchMutants(folder: string, seed: number): number {
  const copy = join(root, '.build/mutants');
  const mutants = pickMutants(root, folder, MUTANTS, seed);
  const words: Readonly<Record<FailedBy, string>> = {
    none: 'fails no test',
    test: 'fails a test',
    time: 'never ends',
  };
  const left = survivingMutants(root, copy, mutants, ({ path, line, before, after }, failedBy) =>
    print(`${words[failedBy].padEnd(14)}${path}:${line}  ${before} -> ${after}`),
  );
  rmSync(copy, { recursive: true, force: true });
  const failing = mutants.length - left.length;
  print(`${failing} of ${mutants.length} small changes to ${folder} fail a test, seed ${seed}`);
  return failing >= SHARE_TO_FAIL * mutants.length ? 0 : 1;
}

/** Builds a yard for the browser to look at, and says how busy the machine was before. */
function buildToLookAt(content: string): string {
  const out = join(scratch, 'out');
  const [load] = loadavg();
  measured(join(root, 'scripts/build.ts'), ['--base', '/', '--leave-list'], root, {
    CONTENT_DIR: content,
    OUT_DIR: out,
    AS_OF: asOf,
  });
  print(`load of the machine before: ${load!.toFixed(1)}`);
  return out;
}

/** A yard of the size the budget of the search speaks of. */
async function benchSearchPage(repeats: number, seed: number): Promise<number> {
  const content = join(scratch, 'content');
  rmSync(scratch, { recursive: true, force: true });
  mkdirSync(content, { recursive: true });
  makeYard(content, join(root, 'content'), { lots: 1500, cultivars: 1000 }, seed);
  print(`1000 cultivars, 1500 lots, seed ${seed}`);
  const within = await benchSearch(buildToLookAt(content), repeats, print);
  rmSync(scratch, { recursive: true, force: true });
  return within ? 0 : 1;
}

async function benchOwnDatesPage(repeats: number): Promise<number> {
  rmSync(scratch, { recursive: true, force: true });
  const visitorsARepeat = 4;
  const within = await benchOwnDates(buildToLookAt(join(root, 'content')), repeats * visitorsARepeat, print);
  rmSync(scratch, { recursive: true, force: true });
  return within ? 0 : 1;
}

async function benchTownsPage(repeats: number): Promise<number> {
  rmSync(scratch, { recursive: true, force: true });
  const within = await benchTowns(buildToLookAt(join(root, 'content')), repeats, print);
  rmSync(scratch, { recursive: true, force: true });
  return within ? 0 : 1;
}

async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, help, {
    lots: { type: 'string', default: '5000' },
    cultivars: { type: 'string', default: '1000' },
    repeats: { type: 'string', default: '3' },
    seed: { type: 'string', default: '1' },
    kills: { type: 'string' },
    'publish-kills': { type: 'string' },
    mutants: { type: 'string' },
    lighthouse: { type: 'boolean', default: false },
    search: { type: 'boolean', default: false },
    'own-dates': { type: 'boolean', default: false },
    towns: { type: 'boolean', default: false },
  });
  if (values.kills !== undefined) return benchKills(wholeNumber(values.kills), wholeNumber(values.seed));
  if (values['publish-kills'] !== undefined)
    return benchPublishKills(wholeNumber(values['publish-kills']), wholeNumber(values.seed));
  if (values.mutants !== undefined) return benchMutants(values.mutants, wholeNumber(values.seed));
  if (values.search) return benchSearchPage(wholeNumber(values.repeats), wholeNumber(values.seed));
  if (values['own-dates']) return benchOwnDatesPage(wholeNumber(values.repeats));
  if (values.towns) return benchTownsPage(wholeNumber(values.repeats));
  const size = { lots: wholeNumber(values.lots), cultivars: wholeNumber(values.cultivars) };
  const repeats = wholeNumber(values.repeats);
  if (values.lighthouse) return (await benchLighthouse(scratch, repeats, print)) ? 0 : 1;
  rmSync(scratch, { recursive: true, force: true });
  const content = join(scratch, 'content');
  mkdirSync(content, { recursive: true });
  makeYard(content, join(root, 'content'), size, wholeNumber(values.seed));
  print(`A yard of ${size.lots} lots and ${size.cultivars} cultivars, seed ${values.seed}`);
  await benchCheck(content, repeats);
  benchBuild({ root, scratch, content, asOf, repeats, lots: size.lots, print });
  benchDemonstration({ root, scratch: join(scratch, 'demonstration'), repeats, print });
  benchGuides({ root, scratch: join(scratch, 'guides'), asOf, places: 60, repeats, print });
  for (const line of photoBenchLines(benchPhotos(6, repeats))) print(line);
  rmSync(scratch, { recursive: true, force: true });
  return 0;
}

await runIfMain(import.meta, main);
