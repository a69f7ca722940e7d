/** A content folder in a git repository of its own, in a folder for the time of a test. No network, no settings of this machine. */

import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const identity = [
  '-c',
  'user.name=Test',
  '-c',
  'user.email=test@bench.example',
  '-c',
  'commit.gpgsign=false',
];

/** Runs git in a folder and returns what it said. Throws when it fails. */
export function git(folder: string, ...words: string[]): string {
  const ran = spawnSync('git', ['-C', folder, ...identity, ...words], {
    encoding: 'utf8',
    env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' },
  });
  if (ran.status !== 0) throw new Error(`git ${words.join(' ')}: ${ran.stderr}`);
  return ran.stdout.trim();
}

export function startRepository(folder: string): void {
  mkdirSync(folder, { recursive: true });
  git(folder, 'init', '--quiet', '--initial-branch=main');
}

export function commitAll(folder: string, message: string): void {
  git(folder, 'add', '--all');
  git(folder, 'commit', '--quiet', '--allow-empty', '--message', message);
}

/** Replaces a piece of a file that must stand there once. */
export function edit(folder: string, file: string, find: string, put: string): void {
  const path = join(folder, file);
  const parts = readFileSync(path, 'utf8').split(find);
  if (parts.length !== 2) throw new Error(`"${find}" is ${parts.length - 1} times in ${file}, not once`);
  writeFileSync(path, parts.join(put));
}
