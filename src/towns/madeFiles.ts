/** The files a browser asks for to find a town: by name, and by ZIP code. */

import { fileStarts, namedTowns, nameFiles } from '../core/towns/nameFiles.ts';
import type { Town } from '../core/towns/town.ts';
import type { NameFile, NameIndex, TownRow, ZipFile } from '../core/towns/townRow.ts';
import { regionNames } from '../core/towns/whereTowns.ts';
import { zipTowns } from '../core/towns/zipTowns.ts';

/** Of the position of a town: about a hundred meters. */
const POSITION_DIGITS = 3;

type ZipPositions = Readonly<Record<string, { latitude: number; longitude: number }>>;

/** Text of each file by its path below the folder of towns. `figures` are those of each town, packed. */
export function townTexts(
  towns: readonly Town[],
  figures: readonly string[],
  positions: ZipPositions,
): Map<string, string> {
  const packed = new Map(towns.map((town, i) => [town, figures[i] ?? '']));
  const regionOf = regionNames(towns);
  const row = (town: Town, name: string): TownRow => [
    town.name,
    regionOf(town),
    town.country,
    Number(town.lat.toFixed(POSITION_DIGITS)),
    Number(town.lon.toFixed(POSITION_DIGITS)),
    Math.round(town.heightM),
    town.people,
    packed.get(town) ?? '',
    ...(name === town.name ? ([] as const) : ([name] as const)),
  ];
  const files = nameFiles(namedTowns(towns));
  const texts = new Map<string, string>();
  const index: NameIndex = { from: fileStarts(files) };
  texts.set('names.json', JSON.stringify(index));
  files.forEach((named, i) => {
    const file: NameFile = { rows: named.map(({ name, town }) => row(town, name)) };
    texts.set(`names/${i}.json`, JSON.stringify(file));
  });
  for (const [prefix, found] of zipTowns(positions, towns)) {
    const file: ZipFile = { zips: found.zips, rows: found.towns.map(town => row(town, town.name)) };
    texts.set(`zip/${prefix}.json`, JSON.stringify(file));
  }
  return texts;
}
