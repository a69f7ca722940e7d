/** The search index of a built site, made with Pagefind from the pages that mark a body for it. */

import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { createIndex } from 'pagefind';
import type { Catalogue } from '../core/catalogue.ts';

/** Parts of the index written for people who want a ready-made search page; ours is our own. */
const readyMadeParts = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\b/;

/**
 * Indexes the lot and cultivar pages of a built site and writes `pagefind/` into it. The pages are added one after the other, in the
 * catalogue's order, so that the same site always gives the same index. Throws when a page is missing or cannot be read.
 */
export async function searchIndex(built: string, catalogue: Catalogue): Promise<void> {
  const { index, errors } = await createIndex({ forceLanguage: 'en' });
  if (!index) throw new Error(`the search index could not be made: ${errors.join('; ')}`);
  try {
    const paths = [
      ...catalogue.cultivars.map(({ cultivar }) => `cultivars/${cultivar.id}/index.html`),
      ...catalogue.lots.map(({ lot }) => `lots/${lot.id}/index.html`),
    ];
    for (const path of paths) {
      const added = await index.addHTMLFile({
        sourcePath: path,
        content: await readFile(join(built, path), 'utf8'),
      });
      if (added.errors.length > 0)
        throw new Error(`${path} could not be indexed: ${added.errors.join('; ')}`);
    }
    const { files, errors: problems } = await index.getFiles();
    if (problems.length > 0) throw new Error(`the search index could not be made: ${problems.join('; ')}`);
    await writeFiles(join(built, 'pagefind'), files);
  } finally {
    await index.deleteIndex();
  }
}

async function writeFiles(
  folder: string,
  files: readonly { path: string; content: Uint8Array }[],
): Promise<void> {
  for (const { path, content } of files) {
    if (readyMadeParts.test(path)) continue;
    const target = join(folder, path);
    await mkdir(dirname(target), { recursive: true });
    await writeFile(target, content);
  }
}
