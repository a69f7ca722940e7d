/** `npm test`: types, lint, then every test. Ends with the line `N passed, N failed`, counting types and lint as one each. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runIfMain } from './command.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Runs a program of an installed package with this Node. */
function run(program: string, words: readonly string[]): boolean {
  process.stdout.write(`\n== ${[program, ...words].join(' ')}\n`);
  const path = join(root, 'node_modules', program);
  return spawnSync(process.execPath, [path, ...words], { cwd: root, stdio: 'inherit' }).status === 0;
}

interface Counts {
  passed: number;
  failed: number;
}

/** Counts of a test run from its JSON report; one failure when there is no report, since then nothing can be said to have passed. */
function readCounts(report: string): Counts {
  try {
    const { numPassedTests, numFailedTests, success } = JSON.parse(readFileSync(report, 'utf8'));
    const brokenFiles = !success && numFailedTests === 0 ? 1 : 0;
    return { passed: numPassedTests, failed: numFailedTests + brokenFiles };
  } catch {
    return { passed: 0, failed: 1 };
  }
}

async function main(words: string[]): Promise<number> {
  const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-test-'));
  const report = join(scratch, 'report.json');
  const steps = [
    run('astro/bin/astro.mjs', ['check', '--minimumSeverity', 'warning']),
    run('@biomejs/biome/bin/biome', ['check', '--error-on-warnings']),
  ];
  const ran = run('vitest/vitest.mjs', [
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...words,
  ]);
  const tests = readCounts(report);
  rmSync(scratch, { recursive: true, force: true });
  const passed = tests.passed + steps.filter(ok => ok).length;
  const failed = tests.failed + steps.filter(ok => !ok).length + (ran || tests.failed > 0 ? 0 : 1);
  process.stdout.write(`\n${passed} passed, ${failed} failed\n`);
  return failed === 0 && passed > 0 ? 0 : 1;
}

await runIfMain(import.meta, main);
