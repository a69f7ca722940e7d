/** `npm test`: types, lint, unused code, then every test. Ends with the line `N passed, N failed`, counting each of the first three as one. */

import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runIfMain } from './command.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

interface Ran {
  ok: boolean;
  /** What it wrote; empty where it wrote to the terminal. */
  said: string;
}

/** Runs a program of an installed package with this Node. Settles when it has ended. */
function run(program: string, words: readonly string[], quiet: boolean): Promise<Ran> {
  const path = join(root, 'node_modules', program);
  const child = spawn(process.execPath, [path, ...words], {
    cwd: root,
    stdio: ['ignore', quiet ? 'pipe' : 'inherit', quiet ? 'pipe' : 'inherit'],
  });
  const parts: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (part: Buffer) => parts.push(part));
  return new Promise(settle => {
    child.on('error', problem => settle({ ok: false, said: String(problem) }));
    child.on('close', code => settle({ ok: code === 0, said: Buffer.concat(parts).toString('utf8') }));
  });
}

const astro = 'astro/bin/astro.mjs';

/** Code that nobody calls, tests counted as callers or not (`tests/knip.config.ts`). */
async function checkUnused(): Promise<Ran> {
  const ran = [
    await run('knip/bin/knip.js', ['--config', 'tests/knip.config.ts'], true),
    await run('knip/bin/knip.js', ['--config', 'tests/knip.config.ts', '--production'], true),
  ];
  return { ok: ran.every(({ ok }) => ok), said: ran.map(({ said }) => said).join('') };
}

/**
 * Types, lint, unused code: whether each is in order. Beside the tests, which seldom need both processors; what is said is held back until the end.
 * The types of the collections are made before anything runs, and a build writes the same again.
 */
async function checkCode(): Promise<Ran[]> {
  const types = await run(astro, ['check', '--noSync', '--minimumSeverity', 'warning'], true);
  const lint = await run('@biomejs/biome/bin/biome', ['check', '--error-on-warnings'], true);
  return [types, lint, await checkUnused()];
}

interface Counts {
  passed: number;
  failed: number;
}

interface Report {
  numPassedTests: number;
  numFailedTests: number;
  testResults: { status: string; assertionResults: { status: string }[] }[];
}

/**
 * Counts of a test run from its JSON report. A file that failed before its first test counts as one failure, and so does a report that
 * is not there, since then nothing can be said to have passed.
 */
function readCounts(report: string): Counts {
  try {
    const { numPassedTests, numFailedTests, testResults }: Report = JSON.parse(readFileSync(report, 'utf8'));
    const brokenFiles = testResults.filter(
      ({ status, assertionResults }) =>
        status === 'failed' && !assertionResults.some(test => test.status === 'failed'),
    );
    return { passed: numPassedTests, failed: numFailedTests + brokenFiles.length };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

async function main(words: string[]): Promise<number> {
  const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-test-'));
  const report = join(scratch, 'report.json');
  const synced = await run(astro, ['sync'], true);
  const checking = checkCode();
  const testing = run(
    'vitest/vitest.mjs',
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...words],
    false,
  );
  const [[types, lint, unused], ran] = [await checking, await testing];
  const steps = [
    { name: 'types', ok: synced.ok && types!.ok, said: synced.ok ? types!.said : synced.said },
    { name: 'lint', ...lint! },
    { name: 'unused code', ...unused! },
  ];
  for (const { name, ok, said } of steps)
    process.stdout.write(`\n== ${name}: ${ok ? 'passed' : 'failed'}\n${said}`);
  const tests = readCounts(report);
  rmSync(scratch, { recursive: true, force: true });
  const passed = tests.passed + steps.filter(({ ok }) => ok).length;
  const failed = tests.failed + steps.filter(({ ok }) => !ok).length + (ran.ok || tests.failed > 0 ? 0 : 1);
  process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  return failed === 0 && passed > 0 ? 0 : 1;
}

await runIfMain(import.meta, main);
