/** The content folder as a git revision has it, read straight from the repository: nothing is checked out or written. */

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { ContentState } from '../src/core/comparison/fileChanges.ts';
import type { PhotoFile } from '../src/core/reading/draft.ts';
import { photoEnds, photoFacts } from '../src/core/reading/photoFacts.ts';
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
  /** Names of photographs that are on both sides with another picture in them. */
  exchanged: string[];
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
  if (hashes.length === 0) return [];
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
 * Hashes git gives to files of the content folder, by path below it. A file that cannot be read has none, and neither has one whose name holds a line break, since
 * git is told the names by line.
 */
function hashesOf({ top, prefix }: Repository, paths: readonly string[]): Map<string, string> {
  const named = paths.filter(path => !/[\r\n]/.test(path) && existsSync(join(top, prefix, path)));
  if (named.length === 0) return new Map();
  // These paths are taken from the top, wherever git is started.
  const lines = named.map(path => `${prefix}${path}\n`).join('');
  const { ok, out } = git(top, ['hash-object', '--stdin-paths'], lines);
  const hashes = out.toString('utf8').split('\n');
  return new Map(ok ? named.map((path, index) => [path, hashes[index]!]) : []);
}

/** Paths below a folder that git is told to ignore: they are in no version. */
function ignoredIn(folder: string): Set<string> {
  if (!existsSync(folder)) return new Set();
  const words = ['ls-files', '--others', '--ignored', '--exclude-standard', '-z'];
  return new Set(git(folder, words).out.toString('utf8').split('\0'));
}

interface PastPhotos {
  photos: PhotoFile[];
  exchanged: string[];
}

/** Photographs of a version: those that are the same now are known already, the others are read from the repository. */
function photosOf(repository: Repository, entries: readonly Entry[], now: readonly PhotoFile[]): PastPhotos {
  const facts = new Map(now.map(photo => [photo.name, photo.facts]));
  const nameOf = ({ path }: Entry) => path.slice(photoFolder.length);
  const both = entries.filter(entry => facts.has(nameOf(entry)));
  const hashes = hashesOf(
    repository,
    both.map(({ path }) => path),
  );
  const isSame = ({ path, hash }: Entry) => hashes.get(path) === hash;
  const other = entries.filter(entry => !isSame(entry));
  const bytes = blobsOf(
    repository.top,
    other.map(({ hash }) => hash),
  );
  const read = new Map(other.map(({ path }, index) => [path, photoFacts(photoEnds(bytes[index]!))]));
  return {
    photos: entries.map(entry => ({
      name: nameOf(entry),
      facts: read.get(entry.path) ?? facts.get(nameOf(entry)) ?? null,
    })),
    exchanged: both.filter(({ path, hash }) => (hashes.get(path) ?? hash) !== hash).map(nameOf),
  };
}

/**
 * The files of a content folder as a revision of its own repository has them, whatever repository that is. `shown` is how people know
 * the folder, `now` what stands in it today: photographs that have not changed are not read again, and what git ignores, which no version
 * has, is taken for the same before. Throws a UsageError in plain words on anything in the way: no git, no repository, no commit, no
 * such revision.
 */
export function contentAt(dir: string, shown: string, asked: string, now: ContentState): PastContent {
  const { top, prefix } = repositoryOf(dir, shown);
  const commit = commitOf(top, asked);
  const revision = describe(top, asked, commit);
  const entries = entriesOf(top, commit, prefix);
  const isPhoto = ({ path }: Entry) => path.startsWith(photoFolder);
  const texts = (entries ?? []).filter(entry => !isPhoto(entry));
  const bytes = blobsOf(
    top,
    texts.map(({ hash }) => hash),
  );
  const inVersion = new Set((entries ?? []).map(({ path }) => path));
  const ignored = ignoredIn(dir);
  const kept = (path: string) => ignored.has(path) && !inVersion.has(path);
  const { photos, exchanged } = photosOf({ top, prefix }, (entries ?? []).filter(isPhoto), now.photos);
  return {
    revision,
    present: entries !== null && entries.length > 0,
    files: [
      ...texts.map(({ path }, index) => ({ path, bytes: bytes[index]! })),
      ...now.files.filter(({ path }) => kept(path)),
    ],
    photos: [...photos, ...now.photos.filter(({ name }) => kept(`${photoFolder}${name}`))],
    exchanged,
  };
}
