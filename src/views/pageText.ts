/** A page written as text: for kinds of pages of which a yard has thousands, where a component for each part would cost more than the page. */

import type { SiteLinks } from '../outputs/siteLinks.ts';
import type { PageThing } from '../outputs/structuredData.ts';
import type { PublishedPhoto } from '../photos.ts';
import type { Html } from '../site/html.ts';

export interface PageText {
  /** Heading of the page, as its head names it. */
  title: string;
  /** One or two sentences for search engines. */
  description: string;
  /** From the root of the site, such as `/lots/26-layer-01/`. */
  path: string;
  /** Path of the page this one is a version of, which search engines are sent to; itself where left out. */
  canonical?: string;
  /** What the page says to programs that read schema.org. */
  things: readonly PageThing[];
  /** All that stands between the running head and the foot. */
  main: Html;
}

/** What a page written as text asks of the site around it. */
export interface PageTools {
  links: SiteLinks;
  /** A photograph by its file, in the widths and formats it is published in. */
  photo: (file: string) => Promise<PublishedPhoto>;
}
