/**
 * Loaded before a build: writing fails as on a full disk, once a number of files whose path has a piece in it have been written. Told by FULL_AT
 * (the piece) and FULL_AFTER (the number).
 */

import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const { FULL_AT, FULL_AFTER } = process.env;
let written = 0;

/** As Node words it (errno(3): ENOSPC). */
function refuse(path) {
  if (!String(path).includes(FULL_AT)) return;
  written += 1;
  if (written <= Number(FULL_AFTER)) return;
  const problem = new Error(`ENOSPC: no space left on device, write '${path}'`);
  throw Object.assign(problem, { code: 'ENOSPC', errno: -28, syscall: 'write' });
}

if (FULL_AT) {
  const { writeFileSync, promises } = fs;
  const { writeFile } = promises;
  fs.writeFileSync = (path, ...rest) => {
    refuse(path);
    return writeFileSync(path, ...rest);
  };
  promises.writeFile = async (path, ...rest) => {
    refuse(path);
    return writeFile(path, ...rest);
  };
  syncBuiltinESMExports();
}
