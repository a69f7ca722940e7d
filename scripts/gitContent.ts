/** The content folder as a git revision has it, read straight from the repository: nothing is checked out or written. */

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import type { ContentState } from '../src/core/comparison/fileChanges.ts';
import { UsageError } from './command.ts';

export interface Revision {
  /** As asked for, such as HEAD or main. */
  asked: string;
  /** The shortened hash of the commit. */
  short: string;
  /** Day of the commit, YYYY-MM-DD, on the committer's calendar. */
  day: string;
  /** First line of what its author wrote. */
  subject: string;
}

export interface PastContent extends ContentState {
  revision: Revision;
  /** Whether the revision has the content folder at all. */
  present: boolean;
}

const photoFolder = 'photos/';
/** A content folder of 5,000 lots is a few megabytes. */
const MOST_BYTES = 1024 ** 3;

/** Variables that a git hook sets and that would point at another repository. */
const hookVariables = ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX', 'GIT_OBJECT_DIRECTORY'];

interface Ran {
  ok: boolean;
  out: Buffer;
  error: string;
}

function environment(): NodeJS.ProcessEnv {
  const env: NodeJS.ProcessEnv = { ...process.env, LC_ALL: 'C', GIT_TERMINAL_PROMPT: '0' };
  for (const name of hookVariables) delete env[name];
  return env;
}

/** Runs git in a folder. Throws a UsageError when there is no git on this machine. */
function git(folder: string, words: readonly string[], input?: string): Ran {
  const ran = spawnSync('git', ['-C', folder, ...words], {
    env: environment(),
    maxBuffer: MOST_BYTES,
    ...(input === undefined ? {} : { input }),
  });
  if (ran.error && (ran.error as NodeJS.ErrnoException).code === 'ENOENT') {
    throw new UsageError(
      'git is not installed here, or not found; it keeps the versions to compare with. See git-scm.com.',
    );
  }
  if (ran.error) throw new UsageError(`git did not answer: ${ran.error.message}`);
  return { ok: ran.status === 0, out: ran.stdout, error: ran.stderr.toString('utf8').trim() };
}

const line = ({ out }: Ran) => out.toString('utf8').trim();

/** The folder itself, or the nearest above it that is there: a content folder may have been deleted. */
function nearestFolder(folder: string): string {
  return existsSync(folder) || dirname(folder) === folder ? folder : nearestFolder(dirname(folder));
}

interface Repository {
  /** Top folder of the working copy. */
  top: string;
  /** The content folder below it, with a slash at its end; '' when it is the top itself. */
  prefix: string;
}

function repositoryOf(dir: string, shown: string): Repository {
  const there = nearestFolder(dir);
  const ran = git(there, ['rev-parse', '--show-toplevel', '--show-prefix']);
  if (!ran.ok && /dubious ownership/.test(ran.error)) {
    throw new UsageError(
      `git does not trust the folder ${there}, which belongs to somebody else on this machine; if it is yours: git config --global --add safe.directory ${there}`,
    );
  }
  if (!ran.ok) {
    throw new UsageError(
      `${shown} is in no git repository, so there is no earlier version to compare with. To start one: git init, then commit the content.`,
    );
  }
  const [top = there, prefix = ''] = ran.out.toString('utf8').split('\n');
  const missing = dir
    .slice(there.length)
    .replace(/^[\\/]+/, '')
    .replaceAll('\\', '/');
  return { top, prefix: `${prefix}${missing === '' ? '' : `${missing}/`}` };
}

function isShallow(top: string): boolean {
  return line(git(top, ['rev-parse', '--is-shallow-repository'])) === 'true';
}

const deepen = 'fetch the rest with: git fetch --unshallow (in a workflow: fetch-depth: 0)';

/** Hash of the commit that a name stands for. */
function commitOf(top: string, asked: string): string {
  const commit = (name: string) =>
    git(top, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${name}^{commit}`]);
  const found = commit(asked);
  if (found.ok) return line(found);
  if (!commit('HEAD').ok) {
    throw new UsageError(
      'nothing has been committed here yet, so there is no earlier version to compare with. Commit first, or run npm run check.',
    );
  }
  if (isShallow(top)) {
    throw new UsageError(
      `only the newest part of the history is here, and "${asked}" is not in it; ${deepen}`,
    );
  }
  throw new UsageError(
    `there is no version "${asked}" here; give a branch, a tag or the hash of a commit (git log --oneline lists them).`,
  );
}

function describe(top: string, asked: string, commit: string): Revision {
  const text = line(git(top, ['log', '-1', '--format=%h%x00%cs%x00%s', commit]));
  const [short = commit, day = '', subject = ''] = text.split('\0');
  return { asked, short, day, subject };
}

interface Entry {
  path: string;
  hash: string;
}

/** Plain files of a tree by path; hidden ones are left out, as they are when the working copy is read. Null: no such folder. */
function entriesOf(top: string, commit: string, prefix: string): Entry[] | null {
  const listed = git(top, ['ls-tree', '-r', '-z', '--full-tree', `${commit}:${prefix.replace(/\/$/, '')}`]);
  if (!listed.ok) return null;
  return listed.out
    .toString('utf8')
    .split('\0')
    .flatMap(text => {
      const [, hash, path] = /^100\d+ blob ([0-9a-f]+)\t(.+)$/s.exec(text) ?? [];
      return hash && path && !/(?:^|\/)\./.test(path) ? [{ path, hash }] : [];
    });
}

/** Bytes of blobs, in order. The answer to each is a line `HASH blob SIZE`, the bytes, and a line end. */
function blobsOf(top: string, hashes: readonly string[]): Uint8Array[] {
  const { out, ok, error } = git(top, ['cat-file', '--batch'], hashes.map(hash => `${hash}\n`).join(''));
  if (!ok) throw new UsageError(`git could not read that version: ${error.split('\n')[0]}`);
  let at = 0;
  return hashes.map(() => {
    const end = out.indexOf('\n', at);
    const size = / blob (\d+)$/.exec(out.toString('utf8', at, end))?.[1];
    if (size === undefined) {
      throw new UsageError(`a part of that version is missing in this repository; ${deepen}`);
    }
    const from = end + 1;
    at = from + Number(size) + 1;
    return new Uint8Array(out.subarray(from, at - 1));
  });
}

/**
 * The files of a content folder as a revision of its own repository has them, whatever repository that is. `shown` is how people know
 * the folder. Throws a UsageError in plain words on anything in the way: no git, no repository, no commit, no such revision.
 */
export function contentAt(dir: string, shown: string, asked: string): PastContent {
  const { top, prefix } = repositoryOf(dir, shown);
  const commit = commitOf(top, asked);
  const revision = describe(top, asked, commit);
  const entries = entriesOf(top, commit, prefix);
  const isPhoto = ({ path }: Entry) => path.startsWith(photoFolder);
  const texts = (entries ?? []).filter(entry => !isPhoto(entry));
  const bytes =
    texts.length === 0
      ? []
      : blobsOf(
          top,
          texts.map(({ hash }) => hash),
        );
  return {
    revision,
    present: entries !== null && entries.length > 0,
    files: texts.map(({ path }, index) => ({ path, bytes: bytes[index]! })),
    photos: (entries ?? [])
      .filter(isPhoto)
      .map(({ path }) => ({ name: path.slice(photoFolder.length), facts: null })),
  };
}
