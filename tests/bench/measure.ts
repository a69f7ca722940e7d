/** Runs a program and says what it used; and the arithmetic of paired runs. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export interface Usage {
  /** User and system time of the process, its threads and the Node processes it forks. */
  cpuSeconds: number;
  /** From the start of the first process to its end. */
  wallSeconds: number;
  /** Of the largest process. */
  peakMegabytes: number;
  /** Peaks of all processes together, whether or not they fell on one moment. */
  peaksMegabytes: number;
}

/** Runs a script with this Node, and the flags given it, and measures it. Throws with its output when it fails. */
export function measured(
  script: string,
  words: readonly string[],
  cwd: string,
  env: Record<string, string>,
  flags: readonly string[] = [],
): Usage {
  const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-bench-'));
  const preload = resolve(import.meta.dirname, 'usage.mjs');
  const ran = spawnSync(process.execPath, [...flags, '--import', preload, script, ...words], {
    cwd,
    encoding: 'utf8',
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', ...env, BENCH_USAGE: scratch },
  });
  if (ran.status !== 0) throw new Error(`${script} failed:\n${ran.stdout}\n${ran.stderr}`);
  const used = readdirSync(scratch).map(
    name => JSON.parse(readFileSync(join(scratch, name), 'utf8')) as Omit<Usage, 'peaksMegabytes'>,
  );
  rmSync(scratch, { recursive: true, force: true });
  const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);
  const peaks = used.map(({ peakMegabytes }) => peakMegabytes);
  return {
    cpuSeconds: sum(used.map(({ cpuSeconds }) => cpuSeconds)),
    wallSeconds: Math.max(...used.map(({ wallSeconds }) => wallSeconds)),
    peakMegabytes: Math.max(...peaks),
    peaksMegabytes: sum(peaks),
  };
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
