/** Builds the demonstration yard once for all tests of the built site, at the root and below a base path. */

import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { builtSites } from './builtSites.ts';

const root = resolve(import.meta.dirname, '../..');

export function setup(): () => void {
  for (const { folder, base } of Object.values(builtSites)) {
    const ran = spawnSync(
      process.execPath,
      [join(root, 'scripts/build.ts'), '--leave-list', '--base', base],
      {
        cwd: root,
        encoding: 'utf8',
        env: { ...process.env, OUT_DIR: folder, CONTENT_DIR: join(root, 'content') },
      },
    );
    if (ran.status !== 0) throw new Error(`the demonstration yard does not build:\n${ran.stderr}`);
  }
  return () => {
    for (const { folder } of Object.values(builtSites)) rmSync(folder, { recursive: true, force: true });
  };
}
