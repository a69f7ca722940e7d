/** Addresses of a guide's version for a place. */

import { href } from '../../href.ts';

/** A guide in general, or for one form and species, or a chapter of it; not a guide for a place. */
const general = new RegExp(
  `^${href('/guides/')}([a-z0-9-]+)/(?:(leafed-pot|dormant-pot|bare-root)/[a-z0-9-]+/)?(#.+)?$`,
);

/** The address of a guide for a place, at the chapter or the part for the form asked about; null for one that is none of a guide in general. */
export function guideAt(address: string, place: string): string | null {
  const [, guide, form, chapter] = general.exec(address) ?? [];
  // The list of places is a chapter of the guide in general alone.
  if (guide === undefined || chapter === '#places') return null;
  return href(`/guides/${guide}/${place}/${chapter ?? (form === undefined ? '' : `#${form}`)}`);
}
