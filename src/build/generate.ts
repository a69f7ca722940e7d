/** Has the site generator build the yard's own pages: `node generate.ts '{"root": ...}'`. Ends with code 1 when it logs any error. */

import { join } from 'node:path';
import { build } from 'astro';
import type { Generation } from './ownPages.ts';

const { root, address, base, folder }: Generation = JSON.parse(process.argv[2]!);
// The build that has started this process is gone.
process.stdin.resume().on('end', () => process.exit());
// A variable of this name, as some shells and test runners set it, would win over the base path in every link.
delete process.env.BASE_URL;
try {
  await build({
    root,
    site: address,
    base,
    outDir: join(folder, 'site'),
    // A cache of the generator's own could publish old content, so each build starts from none.
    cacheDir: join(folder, 'cache'),
    // The files of public/ are published by the program.
    publicDir: join(folder, 'public'),
    mode: 'production',
  });
} catch (problem) {
  process.stderr.write(`${problem instanceof Error ? problem.message : String(problem)}\n`);
  process.exitCode = 1;
}
process.stdin.destroy();
