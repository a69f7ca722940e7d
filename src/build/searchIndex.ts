/** The search index of a site, made with Pagefind from records rather than from pages, so that it need not wait for them. */

import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { close, createIndex, type PagefindIndex } from 'pagefind';
import type { SearchRecord } from '../site/data/searchRecords.ts';

/** Parts of the index written for people who want a ready-made search page; ours is our own. */
const readyMadeParts = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\b/;

export interface SearchIndex {
  /** Writes the index as `pagefind/` into a built site. Throws when the index cannot be made. */
  writeInto: (built: string) => Promise<void>;
}

/**
 * Fails when this process has nothing left to wait for: the index is made by a program of its own, and where that dies, the library goes on
 * waiting for its answer and nothing is said.
 */
function watchProgram(): { stopped: Promise<never>; unwatch: () => void } {
  const { promise: stopped, reject } = Promise.withResolvers<never>();
  const onNothingLeft = () => reject(cannotBeMade(['the program that makes it has stopped']));
  process.once('beforeExit', onNothingLeft);
  return { stopped, unwatch: () => process.off('beforeExit', onNothingLeft) };
}

/**
 * Starts the index of everything a search finds. It is made by a process of its own while the pages are rendered. The same records give the
 * same bytes. `stop` must be called whatever happens.
 */
export function startSearchIndex(
  records: readonly SearchRecord[],
): SearchIndex & { stop: () => Promise<void> } {
  const { stopped, unwatch } = watchProgram();
  const ready = Promise.race([indexOf(records), stopped]);
  // Told by whoever waits for them; a build that fails earlier does not wait.
  for (const each of [ready, stopped]) each.catch(() => undefined);
  return {
    async writeInto(built) {
      const index = await ready;
      // Written here, not by the program, which panics on a full disk.
      const { files, errors } = await Promise.race([index.getFiles(), stopped]);
      if (errors.length > 0) throw cannotBeMade(errors);
      for (const { path, content } of files) {
        if (readyMadeParts.test(path)) continue;
        const to = join(built, 'pagefind', path);
        await mkdir(dirname(to), { recursive: true });
        await writeFile(to, content);
      }
    },
    async stop() {
      const deleted = ready.then(index => index.deleteIndex()).catch(() => undefined);
      await Promise.race([deleted, stopped]).catch(() => undefined);
      await close();
      unwatch();
    },
  };
}

function cannotBeMade(errors: readonly string[]): Error {
  return new Error(`the search index could not be made: ${errors.join('; ')}`);
}

async function indexOf(records: readonly SearchRecord[]): Promise<PagefindIndex> {
  const { index, errors } = await createIndex({ forceLanguage: 'en' });
  if (!index) throw cannotBeMade(errors);
  const problems: string[] = [];
  for (const record of records) {
    const added = await index.addCustomRecord({
      ...record,
      sort: { ...record.sort },
    });
    problems.push(...added.errors);
  }
  if (problems.length > 0) throw cannotBeMade(problems);
  return index;
}
