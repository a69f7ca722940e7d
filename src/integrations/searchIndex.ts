/** The search index of a built site, made with Pagefind from the pages that mark a body for it. */

import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { createIndex } from 'pagefind';

/** Parts of the index written for people who want a ready-made search page; ours is our own. */
const readyMadeParts = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\b/;

/**
 * The pages searched. A cultivar's page names its lots, so a lot is found there; indexing thousands of lot pages too would cost more than
 * rendering them and bury the cultivar among its own lots. A guide is found once, in general, and not again for every place.
 */
const searchedPages = '{cultivars,guides}/*/index.html';

/** Indexes a built site and writes `pagefind/` into it. The same pages give the same bytes. Throws when the index cannot be made. */
export async function searchIndex(built: string): Promise<void> {
  const { index, errors } = await createIndex({ forceLanguage: 'en' });
  if (!index) throw new Error(`the search index could not be made: ${errors.join('; ')}`);
  const outputPath = join(built, 'pagefind');
  try {
    const added = await index.addDirectory({ path: built, glob: searchedPages });
    const written = await index.writeFiles({ outputPath });
    const problems = [...added.errors, ...written.errors];
    if (problems.length > 0) throw new Error(`the search index could not be made: ${problems.join('; ')}`);
  } finally {
    await index.deleteIndex();
  }
  for (const name of await readdir(outputPath)) {
    if (readyMadeParts.test(name)) await rm(join(outputPath, name));
  }
}
