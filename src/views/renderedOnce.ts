/** Parts of pages that were rendered for a catalogue, by what they show. */

import type { Catalogue } from '../core/catalogue.ts';
import { oncePer } from '../site/memo.ts';

const partsOf = oncePer((_all: Catalogue) => new Map<string, Promise<string>>());

/** The HTML of a part, rendered on the first call for its key. The key must name everything that the part's HTML depends on beyond the catalogue. */
export function renderedOnce(all: Catalogue, key: string, render: () => Promise<string>): Promise<string> {
  const parts = partsOf(all);
  let part = parts.get(key);
  if (part === undefined) {
    part = render();
    parts.set(key, part);
  }
  return part;
}
