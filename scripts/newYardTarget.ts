/** The folder a new yard goes into: empty, or holding the demonstration and nothing of anybody's own. */

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { privateDir, shownFolder } from '../src/content.ts';
import { demonstrationAddress } from '../src/core/reading/demonstration.ts';
import { UsageError } from './command.ts';

export interface Target {
  /** Files that are there and belong to the demonstration, with `/`. */
  paths: string[];
  /** Texts of those that may stay as they are. */
  texts: ReadonlyMap<string, string>;
  /** Files that were changed since the last commit. */
  changed: string[];
}

/** Written by every build. */
const written = new Set(['addresses.csv', 'changes.jsonl']);

async function filesIn(folder: string): Promise<string[]> {
  if (!existsSync(folder)) return [];
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter(entry => !entry.isDirectory())
    .map(entry => relative(folder, join(entry.parentPath, entry.name)).replaceAll(sep, '/'))
    .filter(path => path !== 'README.md' && !path.split('/').some(part => part.startsWith('.')))
    .sort();
}

/** Files below a folder that differ from the last commit; none where there is no git. */
function changedSinceCommit(folder: string): string[] {
  const { status, stdout } = spawnSync(
    'git',
    ['-C', folder, 'status', '--porcelain', '--untracked-files=all', '-z', '.'],
    { encoding: 'utf8' },
  );
  if (status !== 0) return [];
  const prefix = spawnSync('git', ['-C', folder, 'rev-parse', '--show-prefix'], {
    encoding: 'utf8',
  }).stdout.trim();
  return stdout
    .split('\0')
    .filter(line => line !== '')
    .map(line => line.slice(3))
    .map(path => (path.startsWith(prefix) ? path.slice(prefix.length) : path))
    .filter(path => !written.has(path))
    .sort();
}

const mostNamed = 5;

function named(paths: readonly string[]): string {
  const more = paths.length > mostNamed ? ` and ${paths.length - mostNamed} more` : '';
  return paths.slice(0, mostNamed).join(', ') + more;
}

/** Looks at what is there. Throws a UsageError where something of the grower's own would go. */
export async function lookAt(folder: string, { mayReplace }: { mayReplace: boolean }): Promise<Target> {
  const all = await filesIn(folder);
  const shown = shownFolder(folder);
  const hidden = privateDir(folder);
  if (existsSync(hidden) && (await readdir(hidden)).length > 0)
    throw new UsageError(
      `${shownFolder(hidden)} is not empty, and what is private is never removed by a command. Move it away and run this again.`,
    );
  if (all.length === 0) return { paths: [], texts: new Map(), changed: [] };
  const yard = await readFile(join(folder, 'yard.yaml'), 'utf8').catch(() => '');
  if (!yard.includes(`address: ${demonstrationAddress}`))
    throw new UsageError(
      `${shown} holds ${all.length} files that are not the demonstration, so nothing was changed. Name an empty folder with CONTENT_DIR, or move these away.`,
    );
  const changed = changedSinceCommit(folder);
  if (changed.length > 0 && !mayReplace)
    throw new UsageError(
      `you have changed ${named(changed)} in ${shown} since the last commit, and they would go with the demonstration. Add --replace to let them go, or commit them first.`,
    );
  const texts = await Promise.all(
    all
      .filter(path => /^(?:species|places|guides)\//.test(path))
      .map(async path => [path, await readFile(join(folder, path), 'utf8')] as const),
  );
  return { paths: all, texts: new Map(texts), changed };
}
