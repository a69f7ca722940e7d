/** The towns around each US ZIP code, in one file for all codes that begin with the same three digits. */

import { around } from 'geokdbush';
import KDBush from 'kdbush';
import type { Position } from '../climate/distance.ts';
import type { Town } from './town.ts';

const PREFIX_LENGTH = 3;
/** Towns offered for one code, and how far they may lie, km: a code of the backcountry has few. Standing: ours. */
const TOWNS_A_ZIP = 3;
const WITHIN_KM = 150;

/** Where the post of the United States delivers: the states, and the territories that have country codes of their own. */
const usPost = new Set(['US', 'PR', 'VI', 'GU', 'AS', 'MP']);

export interface ZipTowns {
  /** Indexes in `towns`, nearest first. */
  readonly zips: Readonly<Record<string, readonly number[]>>;
  readonly towns: readonly Town[];
}

/** By prefix, from positions by ZIP code. Codes with no town near are left out, and so are prefixes of nothing else. */
export function zipTowns(
  positions: Readonly<Record<string, { latitude: number; longitude: number }>>,
  all: readonly Town[],
): Map<string, ZipTowns> {
  const towns = all.filter(({ country }) => usPost.has(country));
  const files = new Map<string, { zips: Record<string, number[]>; towns: Town[] }>();
  if (towns.length === 0) return files;
  const index = new KDBush(towns.length);
  for (const { lat, lon } of towns as readonly Position[]) index.add(lon, lat);
  index.finish();
  for (const [zip, { latitude, longitude }] of Object.entries(positions).sort(([a], [b]) =>
    a < b ? -1 : 1,
  )) {
    const near = around(index, longitude, latitude, TOWNS_A_ZIP, WITHIN_KM).map(i => towns[i] as Town);
    if (near.length === 0) continue;
    const prefix = zip.slice(0, PREFIX_LENGTH);
    const file = files.get(prefix) ?? { zips: {}, towns: [] };
    files.set(prefix, file);
    file.zips[zip] = near.map(town => {
      const known = file.towns.indexOf(town);
      return known >= 0 ? known : file.towns.push(town) - 1;
    });
  }
  return files;
}
