/** What the steps of one build share. */

import type { LoadedContent } from '../content.ts';
import type { Catalogue } from '../core/catalogue.ts';
import type { Records } from '../core/records/records.ts';
import type { SiteLinks } from '../outputs/siteLinks.ts';
import type { PrivacyScan, Secrets } from './privacyScan.ts';

export interface BuildJob {
  /** The project. */
  root: string;
  content: LoadedContent;
  records: Records;
  catalogue: Catalogue;
  /** Where the site goes, and where it is built until then. */
  out: string;
  built: string;
  base: string;
  links: SiteLinks;
  /** What must not be published, and the search for it. */
  secrets: Secrets;
  scan: PrivacyScan;
  /** Hash of the program. */
  program: string;
  /** Hash of what every page rests on. */
  ground: string;
}
