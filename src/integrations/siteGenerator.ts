/** Renders the pages of a build with what is compiled of the program: by an earlier build of the same program, or now. */

import type { BuildJob } from './buildJob.ts';
import { buildLog } from './buildLog.mjs';
import { compileGenerator, generatorKey, keptGenerator } from './keptGenerator.ts';
import { renderKept } from './keptRendering.ts';

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

/** Renders every page the plan of this build asks for. Throws when the generator has logged an error, whatever it made of it. */
export async function render({ job, afresh, onPage }: Rendering): Promise<void> {
  const { root, catalogue, built, base, program } = job;
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
  const generator = kept ?? (await compileGenerator(key, { root, address, base }));
  await renderKept(generator, { address, base, built });
  if (log.problems.length > 0) throw new Error(`the site was not built: ${log.problems[0]}`);
}
