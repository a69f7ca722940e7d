/**
 * Keeps costly results between builds, in .cache/. The key of a result is the hash of everything it was made from: its inputs, all of our code
 * that has a part in it, the packages and the Node that run it. So a kept result is never older than what it stands for; and since it stands
 * behind the hash of its own bytes, a lost, cut or altered file only costs time.
 */

import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { hashOfModule, signed, unsigned, writeWhole } from './files.ts';

export const cacheFolder = resolve('.cache/results');

/** The file that makes the results of each kind, with all it imports. */
const makers = {
  reading: 'src/content.ts',
  climate: 'src/content.ts',
  evidence: 'src/content.ts',
  outlook: 'src/outlooks.ts',
  care: 'src/careYears.ts',
} as const;
export type ResultKind = keyof typeof makers;

/** Hash of all that makes the results of a kind; null where the sources are not at hand, and nothing is kept. */
async function hashOfMaker(kind: ResultKind): Promise<string | null> {
  try {
    const packages = await readFile(resolve('package-lock.json'));
    const code = await hashOfModule(resolve(makers[kind]));
    return createHash('sha256').update(code).update(packages).update(process.version).digest('hex');
  } catch {
    return null;
  }
}

const hashes = new Map<string, Promise<string | null>>();

/** Hash of all that makes the results of a kind, worked out once in a process; null where nothing is to be kept. */
export function makerHash(kind: ResultKind): Promise<string | null> {
  const made = hashes.get(makers[kind]) ?? hashOfMaker(kind);
  hashes.set(makers[kind], made);
  return made;
}

/** Moment from which on what was kept may be taken, ms. A process that is started by a build is told in this variable. */
export const keptSinceVariable = 'LEAFDROP_KEPT_SINCE';
let since = Number(process.env[keptSinceVariable] ?? 0);

/** Takes of what was kept only what has been since a moment, ms; 0 takes everything. */
export function takeKeptSince(ms: number): void {
  since = ms;
}

/** For handing on to whoever works for this process. */
export function keptSince(): number {
  return since;
}

/** Whether a file may be taken that was kept at a moment, ms. */
export function mayBeTaken(keptMs: number): boolean {
  return keptMs >= since;
}

/** What was kept under a path; undefined when there is nothing that may be taken. */
export async function kept(path: string): Promise<unknown> {
  try {
    if (!mayBeTaken((await stat(path)).mtimeMs)) return undefined;
    const bytes = unsigned(await readFile(path));
    return bytes === null ? undefined : deserialize(bytes);
  } catch {
    return undefined;
  }
}

/** Keeps plain data under a path. */
export async function keep(path: string, value: unknown): Promise<void> {
  await writeWhole(path, signed(serialize(value)));
}

/**
 * The result of `compute` for these inputs, from an earlier build when nothing it depends on has changed. Inputs and result must be
 * plain data (typed arrays and maps included).
 */
export async function rememberResult<T>(kind: ResultKind, inputs: unknown, compute: () => T): Promise<T> {
  const source = await makerHash(kind);
  if (source === null) return compute();
  const key = createHash('sha256').update(source).update(serialize(inputs)).digest('hex').slice(0, 32);
  const path = join(cacheFolder, kind, key);
  const before = await kept(path);
  if (before !== undefined) return before as T;
  const result = compute();
  await keep(path, result);
  return result;
}
