/** Writes the sitemap of a built site, from the pages that are there: whoever wrote them, and whenever. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isListed, type PageForSearch, sitemapFiles } from '../outputs/sitemap.ts';

/** `site` is the address of the yard without a path, `base` the path below which the site lives, with a slash at both ends. */
export async function writeSitemap(
  built: string,
  pages: readonly PageForSearch[],
  site: string,
  base: string,
): Promise<void> {
  const addressOf = (path: string) => new URL(base + path.slice(1), site).href;
  const paths = pages.filter(page => isListed(page, addressOf)).map(({ path }) => path);
  for (const { path, text } of sitemapFiles(paths, addressOf)) await writeFile(join(built, path), text);
}
