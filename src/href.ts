/** Links that hold under any base path. Every link of the pages is made here. */

import { siteLinks } from './outputs/siteLinks.ts';

/** A link to a path of this site, such as `/lots/l26-01/`; and the same with the site's own address in front. */
export const { href, absolute } = siteLinks(import.meta.env.SITE, import.meta.env.BASE_URL);
