/** Nothing on the site is closed to search engines; pages that should not be listed say so themselves. */

import { absolute } from '../href.ts';
import { sitemapPath } from '../outputs/sitemap.ts';

export function GET(): Response {
  return new Response(`User-agent: *\nDisallow:\n\nSitemap: ${absolute(sitemapPath)}\n`);
}
