/**
 * Photographs whose ends look right and whose middle cannot be decoded: found when they are checked, not first when they are published. What
 * was decoded once is known by the hash of its bytes, in `.cache/photos-decoded`; losing that only costs time.
 */

import { access, readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { mostPixels } from './core/reading/photoTrouble.ts';
import { hashOfBytes, writeWhole } from './files.ts';
import { inTurns } from './turns.ts';

const cacheFolder = resolve('.cache/photos-decoded');
/** Pictures in memory at once. */
const decodedAtOnce = 2;
/** Side in pixels that is decoded to: a JPEG is shrunk on the way, and every byte of it is read all the same. */
const side = 64;

/**
 * How an original is opened. The bound on pixels is ours, not the library's. Rows are read in order, so that a picture of 60 million
 * pixels is never in memory as a whole; and a file that is damaged or cut short is refused, not shown with a gray area.
 */
export const opening = { limitInputPixels: mostPixels, sequentialRead: true, failOn: 'warning' } as const;

/** What the library says of a picture it cannot read; null for one it can. */
async function troubleOf(path: string): Promise<string | null> {
  // Read a moment ago; what became of it since is told like any other damage.
  const bytes = await readFile(path).catch(
    (problem: NodeJS.ErrnoException) => problem.code ?? problem.message,
  );
  if (typeof bytes === 'string') return bytes;
  const known = join(cacheFolder, hashOfBytes(bytes));
  if (
    await access(known).then(
      () => true,
      () => false,
    )
  )
    return null;
  const [{ default: sharp }, { openable }] = await Promise.all([import('sharp'), import('./photos/heic.ts')]);
  try {
    await sharp(await openable(bytes), opening)
      .resize(side, side, { fit: 'inside' })
      .raw()
      .toBuffer();
  } catch (problem) {
    return (problem instanceof Error ? problem.message : String(problem)).split('\n')[0] ?? '';
  }
  await writeWhole(known, '');
  return null;
}

/** Of some photographs of a content folder those that cannot be decoded, with what the library says of each. */
export async function brokenPhotos(folder: string, names: readonly string[]): Promise<Map<string, string>> {
  const turn = inTurns(decodedAtOnce);
  const found = await Promise.all(
    names.map(name => turn(async () => [name, await troubleOf(join(folder, 'photos', name))] as const)),
  );
  return new Map(found.flatMap(([name, trouble]) => (trouble === null ? [] : [[name, trouble] as const])));
}
