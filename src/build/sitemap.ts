/** Writes the sitemap of a built site, from the pages that are there: whoever wrote them, and whenever. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { SiteLinks } from '../outputs/siteLinks.ts';
import { isListed, type PageForSearch, sitemapFiles } from '../outputs/sitemap.ts';

export async function writeSitemap(
  built: string,
  pages: readonly PageForSearch[],
  { absolute }: SiteLinks,
): Promise<void> {
  const paths = pages.filter(page => isListed(page, absolute)).map(({ path }) => path);
  for (const { path, text } of sitemapFiles(paths, absolute)) await writeFile(join(built, path), text);
}
