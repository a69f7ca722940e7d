/** Refuses to publish where a file is missing that says what was published before: without it the site would begin to forget. */

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addressesFile } from '../core/reading/addressFile.ts';
import { changesFile } from '../core/reading/changeFile.ts';
import { readMark, type SiteMark } from './siteMark.ts';

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

function git(content: string, ...words: string[]) {
  const hookVariables = ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX'];
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([variable]) => !hookVariables.includes(variable)),
  );
  return spawnSync('git', ['-C', content, ...words], { env, encoding: 'utf8' });
}

/** Whether the last commit of the repository that the folder lies in, if there is one, has a file. */
function isCommitted(content: string, name: string): boolean {
  return git(content, 'cat-file', '-e', `HEAD:./${name}`).status === 0;
}

/** Whether the last commit is of a yard with the same web address or name: what another yard has published is not lost here. */
function isCommittedYard(content: string, { yard, address }: SiteMark): boolean {
  const { status, stdout } = git(content, 'show', 'HEAD:./yard.yaml');
  if (status !== 0) return true;
  const written = stdout.split(/\r?\n/);
  return written.some(line => line === `address: ${address}` || line === `name: ${yard}`);
}

/** Whether a folder holds a site of another yard. */
function isOtherSite(out: string, yard: SiteMark): boolean {
  const mark = readMark(out);
  return mark !== null && mark.address !== yard.address && mark.yard !== yard.yard;
}

interface Folders {
  content: string;
  out: string;
  shownDir: string;
}

function refuseLost({ content, out, shownDir }: Folders, yard: SiteMark, { name, would, anew }: Kept): void {
  if (hasLines(join(content, name))) return;
  const shown = join(shownDir, name);
  const lost = `${shown} is missing: ${would}.`;
  if (hasLines(join(out, name)) && !isOtherSite(out, yard))
    throw new Error(
      `${lost} The site in ${out} carries it: npm run published -- add ${out} puts it back. ${anew(out)}`,
    );
  if (isCommitted(content, name) && isCommittedYard(content, yard))
    throw new Error(`${lost} The last commit has it: git restore ${shown} puts it back. ${anew(out)}`);
}

/** Throws where the list of addresses, or the log of changes, is lost: the site in the output folder carries it, or the last commit has it. */
export function refuseLostFiles(folders: Folders, yard: SiteMark): void {
  for (const kept of [list, log]) refuseLost(folders, yard, kept);
}
