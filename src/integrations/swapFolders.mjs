/**
 * Puts a finished folder in the place of another, says so, and removes the other: `node swapFolders.mjs FINISHED PLACE OLD`. A program of its
 * own, started apart from the build, so that killing the build between the two renames cannot leave the place empty. JavaScript, since it
 * runs as it is.
 */

import { existsSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

const [finished, place, old] = process.argv.slice(2);
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
  // Under a name from which nothing is ever put back, since from here on it is no whole site; the number says that somebody sees to it.
  const gone = join(dirname(place), `.${basename(place)}-gone-${process.pid}`);
  renameSync(old, gone);
  rmSync(gone, { recursive: true, force: true });
}
