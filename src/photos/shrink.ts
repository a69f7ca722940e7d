/**
 * A large original made smaller for the repository: upright, with its color profile, without the place where it was taken, and still larger than
 * any copy that is published.
 */

import sharp from 'sharp';
import { photoEnds, photoFacts } from '../core/reading/photoFacts.ts';
import { opening } from '../wholePhotos.ts';
import { frames } from './settings.ts';

/** Half as much again as the widest copy, so that a later, larger setting finds something to work with. Ours. */
const mostPixels = Math.max(...frames.map(({ width }) => width)) * 1.5;

/** An original is worth shrinking above this many bytes, and only when it becomes a good deal smaller. Ours. */
export const worthShrinking = 2e6;
const leastSaved = 0.25;

/** Quality at which a JPEG that is made from a JPEG shows no difference at the sizes that are published. Ours. */
const quality = 90;

export type Shrunk = { bytes: Uint8Array } | { kept: string };

/** A smaller original in the same format, or why it is left as it is. Throws what the library says of a file it cannot read. */
export async function shrunk(original: Uint8Array): Promise<Shrunk> {
  const { kind } = photoFacts(photoEnds(original));
  if (original.length < worthShrinking) return { kept: 'small enough' };
  if (kind !== 'jpeg' && kind !== 'png' && kind !== 'webp')
    return { kept: `${kind.toUpperCase()} is left as the camera wrote it` };
  const picture = sharp(original, opening)
    .autoOrient()
    .resize({ width: mostPixels, height: 2 * mostPixels, fit: 'inside', withoutEnlargement: true })
    .keepIccProfile();
  const smaller = {
    jpeg: () => picture.jpeg({ quality }),
    png: () => picture.png({ compressionLevel: 9 }),
    webp: () => picture.webp({ quality }),
  }[kind];
  const bytes = await smaller().toBuffer();
  if (bytes.length > original.length * (1 - leastSaved)) return { kept: 'would not become much smaller' };
  return { bytes };
}
