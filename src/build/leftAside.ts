/** Files that a killed process has written beside their place and not put into it. */

import { readdir, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { isRunning } from './processMark.ts';

/** Removes them. A number in the name of one tells the process that wrote it. */
export async function clearLeftAside(path: string): Promise<void> {
  const begin = `.${basename(path)}-`;
  for (const name of await readdir(dirname(path)).catch(() => [])) {
    const pid = name.startsWith(begin)
      ? /^(\d+)-[0-9a-f]{8}$/.exec(name.slice(begin.length))?.[1]
      : undefined;
    if (pid !== undefined && !isRunning(Number(pid))) await rm(join(dirname(path), name), { force: true });
  }
}
