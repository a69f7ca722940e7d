/**
 * Puts a finished folder in the place of another, says so, and removes the other: `node swapFolders.ts FINISHED PLACE OLD`. A program of its
 * own, started apart from the build, so that killing the build between the two renames cannot leave the place empty. Killed itself between
 * them, as by a power cut, it leaves the old site beside the place, and the next command puts it back.
 */

import { existsSync, renameSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { markOf } from './processMark.ts';
import { removeSite } from './siteMark.ts';

const [finished, place, old] = process.argv.slice(2) as [string, string, string];
const before = existsSync(place);
if (before) renameSync(place, old);
try {
  renameSync(finished, place);
} catch (problem) {
  if (before) renameSync(old, place);
  throw problem;
}
try {
  writeSync(1, 'in place\n');
} catch {
  // The build was killed: nobody waits to hear it.
}
if (before) {
  // Under a name from which nothing is ever put back, since from here on it is no whole site; the name says that this process sees to it.
  const { pid, started } = markOf(process.pid);
  const gone = join(dirname(place), `.${basename(place)}-gone-${pid}${started ? `-${started}` : ''}`);
  renameSync(old, gone);
  removeSite(gone);
}
