/** The search index of a site, made with Pagefind from records rather than from pages, so that it need not wait for them. */

import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { close, createIndex, type PagefindIndex } from 'pagefind';
import type { SearchRecord } from '../views/searchRecords.ts';

/** Parts of the index written for people who want a ready-made search page; ours is our own. */
const readyMadeParts = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\b/;

export interface SearchIndex {
  /** Writes the index as `pagefind/` into a built site. Throws when the index cannot be made. */
  writeInto: (built: string) => Promise<void>;
}

/**
 * Starts the index of everything a search finds. It is made by a process of its own while the pages are rendered. The same records give the
 * same bytes. `stop` must be called whatever happens.
 */
export function startSearchIndex(
  records: readonly SearchRecord[],
): SearchIndex & { stop: () => Promise<void> } {
  const ready = indexOf(records);
  // Told by whoever waits for it; a build that fails earlier does not wait.
  ready.catch(() => undefined);
  return {
    async writeInto(built) {
      const outputPath = join(built, 'pagefind');
      const { errors } = await (await ready).writeFiles({ outputPath });
      if (errors.length > 0) throw cannotBeMade(errors);
      for (const name of await readdir(outputPath)) {
        if (readyMadeParts.test(name)) await rm(join(outputPath, name));
      }
    },
    async stop() {
      await ready.then(index => index.deleteIndex()).catch(() => undefined);
      await close();
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
