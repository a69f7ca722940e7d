/** `npm run station-factors`: works out the season factors of the stations anew, after a change of the model or of the tables. */

import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { stationNetwork } from '../src/core/climate/anywhere/network.ts';
import { factorsOfStation } from '../src/core/climate/anywhere/stationFactors.ts';
import { MODEL_VERSION } from '../src/core/climate/weatherYears.ts';
import { writeWhole } from '../src/files.ts';
import { readTables } from '../src/stations/read.ts';
import { readFlags, runIfMain } from './command.ts';

const help = `Works out how the spread of nights at each weather station must be stretched for the model to meet its observed freeze dates
and coldest nights, and writes src/stations/season-factors.json.gz. Takes some minutes.

  npm run station-factors
`;

export async function main(words: string[]): Promise<number> {
  readFlags(words, help, {});
  const network = stationNetwork(readTables());
  const factors = network.stations.map(station => factorsOfStation(network, station));
  const column = (season: 'spring' | 'fall' | 'winter') =>
    factors.map(each => {
      const factor = each?.[season] ?? null;
      return factor === null ? null : Math.round(factor * 100);
    });
  const table = {
    model: MODEL_VERSION,
    spring: column('spring'),
    fall: column('fall'),
    winter: column('winter'),
  };
  await writeWhole(
    fileURLToPath(new URL('../src/stations/season-factors.json.gz', import.meta.url)),
    gzipSync(JSON.stringify(table), { level: 9 }),
  );
  process.stdout.write(`Wrote the factors of ${factors.filter(each => each !== null).length} stations.\n`);
  return 0;
}

await runIfMain(import.meta, main);
