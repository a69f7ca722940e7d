/** `npm start`: checks, builds and serves the site, and prints its address. Packages were installed before this runs. */

import { build } from '../src/build/publish.ts';
import { basePath } from './basePath.ts';
import { readFlags, runIfMain } from './command.ts';
import { portOf } from './port.ts';
import { serve } from './serve.ts';

const help = `Checks content/, builds the site and serves it on this machine.

  npm start
  npm start -- --as-of 2026-11-25 --port 4400 --base /orchard/
`;

async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, help, {
    'as-of': { type: 'string' },
    base: { type: 'string' },
    port: { type: 'string' },
  });
  const port = portOf(values.port);
  const base = basePath(values.base);
  process.stdout.write('Checking and building ...\n');
  const site = await build({ asOf: values['as-of'], base });
  if (site === null) return 1;
  const served = await serve(site.out, base, port);
  process.stdout.write(
    `Built ${site.made + site.unchanged} files of ${site.yardName} for ${site.asOf}.\n` +
      `The site is at ${served.address}  (Ctrl+C stops it)\n`,
  );
  await served.closed();
  return 0;
}

await runIfMain(import.meta, main);
