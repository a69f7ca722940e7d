/**
 * Puts a finished folder in the place of another: `node swapFolders.mjs FINISHED PLACE OLD`. A program of its own, started apart from the
 * build, so that killing the build between the two renames cannot leave the place empty. JavaScript, since it runs as it is.
 */

import { existsSync, renameSync } from 'node:fs';

const [finished, place, old] = process.argv.slice(2);
const before = existsSync(place);
if (before) renameSync(place, old);
try {
  renameSync(finished, place);
} catch (problem) {
  if (before) renameSync(old, place);
  throw problem;
}
