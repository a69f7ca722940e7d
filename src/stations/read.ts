/** Reads the tables of stations that lie beside this file. At build time only: nothing of them is sent to a visitor as it stands. */

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Station } from '../core/climate/anywhere/station.ts';
import {
  normalsStations,
  reportsStations,
  withSeasonFactors,
} from '../core/climate/anywhere/stationTable.ts';

/** From the folder of the project, where every command runs: the compiled site generator is elsewhere, and the tables are not with it. */
const folder = 'src/stations';

function table(file: string) {
  const path = resolve(folder, file);
  try {
    return JSON.parse(gunzipSync(readFileSync(path)).toString('utf8'));
  } catch (fault) {
    throw new RangeError(
      `${folder}/${file} cannot be read (${fault instanceof Error ? fault.message : fault}). It may be cut short: fetch it anew with git checkout.`,
    );
  }
}

let stations: readonly Station[] | null = null;

/** Every station of both tables without season factors, in the order of the tables. */
export function readTables(): Station[] {
  return [
    ...normalsStations(table('us-1981-2010.json.gz')),
    ...reportsStations(table('world-2003-2021.json.gz')),
  ];
}

/** Every station of both tables, read once. Throws a RangeError with the file's name when one is damaged. */
export function readStations(): readonly Station[] {
  stations ??= withSeasonFactors(readTables(), table('season-factors.json.gz'));
  return stations;
}
