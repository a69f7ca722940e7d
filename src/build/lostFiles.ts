/** Refuses to publish where a file is missing that says what was published before: without it the site would begin to forget. */

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addressesFile } from '../core/reading/addressFile.ts';
import { changesFile } from '../core/reading/changeFile.ts';

interface Kept {
  name: string;
  /** What a build without it would do. */
  would: string;
  /** How a yard that has none begins it. */
  anew: (out: string) => string;
}

const list: Kept = {
  name: addressesFile,
  would: 'the site would forget every address it was published with',
  anew: () => 'A yard that was never published begins its list with npm run published -- start.',
};
const log: Kept = {
  name: changesFile,
  would: 'the feeds would list once more, with other days, what they have listed before',
  anew: out => `To begin it anew on purpose, commit the yard without it and remove ${out}.`,
};

function hasLines(path: string): boolean {
  return existsSync(path) && readFileSync(path, 'utf8').trim() !== '';
}

/** Whether the last commit of the repository that the folder lies in, if there is one, has a file. */
function isCommitted(content: string, name: string): boolean {
  const hookVariables = ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX'];
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([variable]) => !hookVariables.includes(variable)),
  );
  return spawnSync('git', ['-C', content, 'cat-file', '-e', `HEAD:./${name}`], { env }).status === 0;
}

function refuseLost(content: string, out: string, shownDir: string, { name, would, anew }: Kept): void {
  if (hasLines(join(content, name))) return;
  const shown = join(shownDir, name);
  const lost = `${shown} is missing: ${would}.`;
  if (hasLines(join(out, name)))
    throw new Error(
      `${lost} The site in ${out} carries it: npm run published -- add ${out} puts it back. ${anew(out)}`,
    );
  if (isCommitted(content, name))
    throw new Error(`${lost} The last commit has it: git restore ${shown} puts it back. ${anew(out)}`);
}

/** Throws where the list of addresses, or the log of changes, is lost: the site in the output folder carries it, or the last commit has it. */
export function refuseLostFiles(content: string, out: string, shownDir: string): void {
  for (const kept of [list, log]) refuseLost(content, out, shownDir, kept);
}
