/** What the pages of this site are made with. */

import { absolute, href } from '../href.ts';
import { photo } from '../photos.ts';
import type { PageContext } from '../site/page.ts';

export const pageContext: PageContext = { links: { href, absolute }, photo };
