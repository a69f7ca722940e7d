/** Runs a program and says what it used; and the arithmetic of paired runs. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export interface Usage {
  /** User and system time of the process and its threads. */
  cpuSeconds: number;
  wallSeconds: number;
  peakMegabytes: number;
}

/** Runs a script with this Node and measures it. Throws with its output when it fails. */
export function measured(
  script: string,
  words: readonly string[],
  cwd: string,
  env: Record<string, string>,
): Usage {
  const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-bench-'));
  const usage = join(scratch, 'usage.json');
  const preload = resolve(import.meta.dirname, 'usage.mjs');
  const ran = spawnSync(process.execPath, ['--import', preload, script, ...words], {
    cwd,
    encoding: 'utf8',
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', ...env, BENCH_USAGE: usage },
  });
  if (ran.status !== 0) throw new Error(`${script} failed:\n${ran.stdout}\n${ran.stderr}`);
  const result = JSON.parse(readFileSync(usage, 'utf8')) as Usage;
  rmSync(scratch, { recursive: true, force: true });
  return result;
}

/** CPU seconds a function takes in this process. */
export function cpuSecondsOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Median, least and greatest of the ratios of paired runs, as text. */
export function ratioInWords(pairs: readonly { ours: number; plain: number }[]): string {
  const ratios = pairs.map(({ ours, plain }) => ours / plain);
  const [low, high] = [Math.min(...ratios), Math.max(...ratios)];
  return `${median(ratios).toFixed(2)} (${low.toFixed(2)} to ${high.toFixed(2)} in ${ratios.length} pairs)`;
}
