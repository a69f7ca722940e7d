/** Which photographs the site shows. */

import type { Catalogue } from '../../core/catalogue.ts';

/** File names of all photographs of cultivars and lots, each once. */
export function photoFiles({ cultivars, lots }: Catalogue): string[] {
  const files = new Set<string>();
  for (const { cultivar } of cultivars) for (const { file } of cultivar.photos) files.add(file);
  for (const { lot } of lots) if (lot.photo) files.add(lot.photo.file);
  return [...files].sort();
}
