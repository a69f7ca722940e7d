/** The files of public/, which are published as they are. */

import { readdir } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import type { CopiedFile } from '../site/site.ts';

export async function publicFiles(root: string): Promise<CopiedFile[]> {
  const folder = join(root, 'public');
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name))
    .sort()
    .map(from => ({ file: relative(folder, from).replaceAll(sep, '/'), from }));
}
