/** Runs the site generator: compiles the program and renders the pages, or renders them with what an earlier build has compiled of the same program. */

import { rm } from 'node:fs/promises';
import { build as buildSite } from 'astro';
import type { BuildJob } from './buildJob.ts';
import { buildLog } from './buildLog.mjs';
import { generatorKeeper, generatorKey, keptGenerator } from './keptGenerator.ts';
import { renderKept } from './keptRendering.ts';
import { folderBeside } from './siteFolders.ts';

/** Says now and then how far a long build has come. */
function showProgress(pages: number): void {
  const everyPages = 500;
  if (pages % everyPages === 0) process.stderr.write(`  ${pages} pages ...\n`);
}

export interface Rendering {
  job: BuildJob;
  /** Compiles the program again, also where what was compiled of it is kept. */
  afresh: boolean;
  /** Called whenever a page was begun. */
  onPage: () => void;
}

/** Compiles the program and renders its pages; what was compiled is kept for the next build. */
async function compileAndRender({ root, catalogue, out, built, base }: BuildJob, key: string): Promise<void> {
  const cache = folderBeside(out, 'cache');
  const keeper = generatorKeeper(built);
  // A variable of this name, as some shells and test runners set it, would win over the base path in every link.
  delete process.env.BASE_URL;
  await buildSite({
    root,
    site: catalogue.yard.address,
    base,
    outDir: built,
    // A cache of the generator's own could publish old content, so each build starts from none.
    cacheDir: cache,
    mode: 'production',
    integrations: [keeper.integration],
    // The folder is new, and others write into it beside the generator, which would empty it at its own time.
    vite: { build: { emptyOutDir: false } },
  }).finally(() => rm(cache, { recursive: true, force: true }));
  if (buildLog().problems.length === 0) await keeper.keep(key);
}

/** Renders every page the plan of this build asks for. Throws when the generator has logged an error, whatever it made of it. */
export async function render({ job, afresh, onPage }: Rendering): Promise<void> {
  const { catalogue, built, base, program } = job;
  const log = buildLog();
  log.problems.length = 0;
  log.pages = 0;
  log.onPage = pages => {
    showProgress(pages);
    onPage();
  };
  const { address } = catalogue.yard;
  const key = generatorKey(program, address, base);
  const kept = afresh ? null : await keptGenerator(key);
  if (kept === null) await compileAndRender(job, key);
  else await renderKept(kept, { address, base, built });
  if (log.problems.length > 0) throw new Error(`the site was not built: ${log.problems[0]}`);
}
