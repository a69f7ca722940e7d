/** What a species is called. */

import type { Species } from '../../core/records/species.ts';

/** The common name a species is shown under; the botanical one where it has none. */
export function speciesName({ common, botanical }: Pick<Species, 'common' | 'botanical'>): string {
  return common[0] ?? botanical;
}
