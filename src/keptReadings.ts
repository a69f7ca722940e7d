/**
 * What the files of the content say, kept between commands in one file for a content folder: a file that has the bytes it had is not taken apart and
 * checked again. How the records fit together is checked every time. Only files without a problem of their own are kept.
 */

import { join } from 'node:path';
import type { SourceFile } from './core/reading/read.ts';
import { type FileReading, readingOf, reuseReading } from './core/reading/readers.ts';
import { hashOfBytes } from './files.ts';
import { hashOf } from './hash.ts';
import { cacheFolder, keep, kept, makerHash } from './resultStore.ts';

/** By the hash of their bytes. */
type Readings = Map<string, FileReading>;

/**
 * Lets files of a content folder be read as they were read before, by this program. What it returns keeps, once they have been read, what is new
 * about them; that this fails, as on a disk that may not be written, costs the next command some time.
 */
export async function reuseReadings(dir: string, files: readonly SourceFile[]): Promise<() => Promise<void>> {
  const maker = await makerHash('reading');
  if (maker === null) return async () => undefined;
  const path = join(cacheFolder, 'reading', hashOf(dir));
  const [madeBy, before] = ((await kept(path)) as [string, Readings] | undefined) ?? [];
  const known: Readings = (madeBy === maker && before) || new Map();
  const hashed = files.map(({ bytes }) => ({ bytes, hash: hashOfBytes(bytes) }));
  for (const { bytes, hash } of hashed) {
    const reading = known.get(hash);
    if (reading !== undefined) reuseReading(bytes, reading);
  }
  return async () => {
    const readings: Readings = new Map();
    for (const { bytes, hash } of hashed) {
      const reading = readingOf(bytes);
      if (reading?.read.problems.length === 0) readings.set(hash, reading);
    }
    if ([...readings.keys()].some(hash => !known.has(hash)))
      await keep(path, [maker, readings]).catch(() => undefined);
  };
}
