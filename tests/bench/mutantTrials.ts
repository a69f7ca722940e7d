/** Tries small changes to the core one by one against the tests of the core that reach the changed file: a change that fails none shows what no test holds. */

import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import type { Mutant } from './mutants.ts';

/** Of each trial: `none` where every test passed; `test` where one failed; `time` where they took so long that the change made a loop endless. */
export type FailedBy = 'none' | 'test' | 'time';

/** Where the tests of the core are: its own, and those of the words and files made of it that build no site. */
const testPaths =
  /^(?:src\/(?:core|markdown|outputs)|tests\/(?:care|match)|tests\/guides-[\w-]+)\b.*\.test\.ts$/;
const copied = ['src', 'tests', 'content', 'scripts', 'package.json', 'tsconfig.json'];

/** One worker, one file after the other in the order given, nothing more after the first failure. Threads, so that ending the process ends them. */
const config = `import { defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';

const files = JSON.parse(process.env.TEST_FILES);

class AsGiven extends BaseSequencer {
  async sort(specifications) {
    const at = ({ moduleId }) => files.findIndex(file => moduleId.endsWith('/' + file));
    return [...specifications].sort((a, b) => at(a) - at(b));
  }
}

export default defineConfig({
  test: {
    include: files,
    setupFiles: ['tests/seeds.ts'],
    isolate: false,
    pool: 'threads',
    maxWorkers: 1,
    bail: 1,
    testTimeout: 900_000,
    hookTimeout: 900_000,
    fsModuleCachePath: '.transformed',
    sequence: { sequencer: AsGiven },
  },
});
`;

function filesBelow(copy: string, folder: string): string[] {
  return readdirSync(join(copy, folder), { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && entry.name.endsWith('.ts'))
    .map(entry => relative(copy, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
}

/** Files of the project that a file loads, types left out. */
function loadedBy(copy: string, path: string): string[] {
  const text = readFileSync(join(copy, path), 'utf8');
  return [...text.matchAll(/^(?:import|export)\s(?!type\s)(?:[^;]*?\sfrom\s)?\s*'(\.[^']+)'/gm)]
    .map(([, target]) => relative(copy, join(copy, dirname(path), target!)).replaceAll('\\', '/'))
    .filter(target => target.endsWith('.ts') && existsSync(join(copy, target)));
}

/** For each test file, all files it loads itself or through others. */
function reachOfTests(copy: string): Map<string, Set<string>> {
  const loads = new Map<string, string[]>();
  const reachFrom = (path: string, reached: Set<string>): Set<string> => {
    if (reached.has(path)) return reached;
    reached.add(path);
    const next = loads.get(path) ?? loadedBy(copy, path);
    loads.set(path, next);
    for (const target of next) reachFrom(target, reached);
    return reached;
  };
  const tests = ['src', 'tests']
    .flatMap(folder => filesBelow(copy, folder))
    .filter(path => testPaths.test(path));
  return new Map(tests.map(path => [path, reachFrom(path, new Set())]));
}

/** A trial may take so many times the processor time that the tests take without a change, and so much more, s, before its loop counts as endless. */
const HANGS_AFTER = 4;
const HANGS_MARGIN_S = 30;

/** Processor time and not time on the wall, so that a busy machine ends no trial. */
const limited = 'ulimit -t "$1"; shift; exec "$@"';

function runTests(copy: string, files: readonly string[], cpuSeconds: number | 'unlimited'): FailedBy {
  const report = join(copy, '.report.json');
  rmSync(report, { force: true });
  const vitest = [join(copy, 'node_modules/vitest/vitest.mjs'), 'run', '--config', 'mutants.config.mjs'];
  const { status, signal } = spawnSync(
    '/bin/sh',
    [
      '-c',
      limited,
      'sh',
      String(cpuSeconds),
      process.execPath,
      ...vitest,
      '--reporter=json',
      `--outputFile=${report}`,
    ],
    { cwd: copy, stdio: 'ignore', env: { ...process.env, TEST_FILES: JSON.stringify(files) } },
  );
  if (signal === 'SIGXCPU' || signal === 'SIGKILL') return 'time';
  return status === 0 ? 'none' : 'test';
}

interface JsonReport {
  readonly testResults: readonly { name: string; startTime: number; endTime: number }[];
}

/** How long each test file took in the last run, ms. */
function durations(copy: string): Map<string, number> {
  const { testResults } = JSON.parse(readFileSync(join(copy, '.report.json'), 'utf8')) as JsonReport;
  return new Map(
    testResults.map(({ name, startTime, endTime }) => [
      relative(copy, name).replaceAll('\\', '/'),
      endTime - startTime,
    ]),
  );
}

function makeCopy(root: string, copy: string): void {
  rmSync(copy, { recursive: true, force: true });
  mkdirSync(copy, { recursive: true });
  for (const name of copied) cpSync(join(root, name), join(copy, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'junction');
  writeFileSync(join(copy, 'mutants.config.mjs'), config);
}

/**
 * Tries changes one by one in a copy of the project at `copy`, the quickest tests first, and tells each as it is tried. Every change is tried, also one that
 * nothing could show. Answers with those that failed no test. Throws an Error where the tests fail without any change.
 */
export function survivingMutants(
  root: string,
  copy: string,
  mutants: readonly Mutant[],
  tell: (mutant: Mutant, failedBy: FailedBy) => void,
): Mutant[] {
  makeCopy(root, copy);
  const reach = reachOfTests(copy);
  const reaching = (path: string) =>
    [...reach].filter(([, reached]) => reached.has(path)).map(([test]) => test);
  const all = [...new Set(mutants.flatMap(({ path }) => reaching(path)))];
  if (all.length > 0 && runTests(copy, all, 'unlimited') !== 'none')
    throw new Error('tests of the core fail without a change');
  const took = all.length > 0 ? durations(copy) : new Map<string, number>();
  const msOf = (test: string) => took.get(test) ?? 0;
  return mutants.filter(mutant => {
    const tests = reaching(mutant.path).sort((a, b) => msOf(a) - msOf(b));
    const usualMs = tests.reduce((sum, test) => sum + msOf(test), 0);
    const file = join(copy, mutant.path);
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.slice(0, mutant.from) + mutant.after + text.slice(mutant.to));
    const cpuSeconds = Math.ceil((HANGS_AFTER * usualMs) / 1000) + HANGS_MARGIN_S;
    const failedBy = tests.length === 0 ? 'none' : runTests(copy, tests, cpuSeconds);
    writeFileSync(file, text);
    tell(mutant, failedBy);
    return failedBy === 'none';
  });
}
