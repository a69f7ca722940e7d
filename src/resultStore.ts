/**
 * Keeps costly results of the core between builds, in .cache/. The key of a result is the hash of everything it was made from: its
 * inputs and the source of the core itself. So a kept result is never older than what it stands for, and a lost or broken file only costs time.
 */

import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { hashOfFiles, writeWhole } from './files.ts';

const cacheFolder = resolve('.cache/results');
const coreFolder = resolve('src/core');

/** Hash of the source of the core; null where the sources are not at hand, and nothing is kept. */
function hashOfCore(): Promise<string | null> {
  return hashOfFiles(coreFolder, /(?<!\.test)\.ts$/).catch(() => null);
}

let core: Promise<string | null> | undefined;

/** What was kept under a path; undefined when there is nothing readable. */
async function kept(path: string): Promise<unknown> {
  try {
    return deserialize(await readFile(path));
  } catch {
    return undefined;
  }
}

/**
 * The result of `compute` for these inputs, from an earlier build when nothing it depends on has changed. Inputs and result must be
 * plain data (typed arrays and maps included).
 */
export async function rememberResult<T>(kind: string, inputs: unknown, compute: () => T): Promise<T> {
  core ??= hashOfCore();
  const source = await core;
  if (source === null) return compute();
  const key = createHash('sha256').update(source).update(serialize(inputs)).digest('hex').slice(0, 32);
  const path = join(cacheFolder, kind, key);
  const before = await kept(path);
  if (before !== undefined) return before as T;
  const result = compute();
  await writeWhole(path, serialize(result));
  return result;
}
