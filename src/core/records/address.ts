/** One line of content/addresses.csv, the list of every address the site was ever published with. */

import type { Day } from '../days.ts';

export interface AddressRow {
  /** From the root of the site, with its part where it names one: `/guides/first-winter/#lifting`. */
  address: string;
  /** The day from which this line holds. */
  since: Day;
  /** Where the address leads now; null while it is a page, or a named part of one. */
  leadsTo: string | null;
  /** Line of the file, 1-based. */
  line: number;
}
