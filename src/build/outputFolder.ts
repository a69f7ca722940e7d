/** Where a finished site may go. A build replaces the whole folder, so it takes none that could hold anything else. */

import {
  accessSync,
  constants,
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  realpathSync,
} from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import { readMark, type SiteMark } from './siteMark.ts';

/** A folder that no site is put in; the message says why and what to do instead. */
export class OutputError extends Error {
  override name = 'OutputError';
}

/** What no build may touch: all as absolute paths. */
export interface Surroundings {
  /** The project. */
  root: string;
  /** Folders of the grower's records. */
  content: readonly string[];
  home: string;
}

/** Folders of the project that belong to the program or to its tools. What is built there would become part of the next build, or be lost. */
const programFolders = [
  '.astro',
  '.cache',
  '.git',
  '.github',
  'content',
  'node_modules',
  'public',
  'scripts',
  'src',
  'tests',
];

/** A path with symlinks followed, as far as it exists. */
export function followed(path: string): string {
  try {
    return realpathSync.native(path);
  } catch {
    const above = dirname(path);
    return above === path ? path : join(followed(above), basename(path));
  }
}

/** Whether a path is a folder or lies in it. */
export function isWithin(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}

/** Whether a folder is where a file system begins, which cannot be renamed: a disk of its own, or a folder shown at two places. */
function isMountPoint(folder: string): boolean {
  if (lstatSync(folder).dev !== lstatSync(dirname(folder)).dev) return true;
  try {
    // Field 5 of each line, signs like blanks as octal numbers (proc_pid_mountinfo(5)).
    return readFileSync('/proc/self/mountinfo', 'utf8')
      .split('\n')
      .map(line =>
        line.split(' ')[4]?.replace(/\\([0-7]{3})/g, (_, code) => String.fromCharCode(parseInt(code, 8))),
      )
      .includes(folder);
  } catch {
    return false;
  }
}

const remedy = 'Name an empty folder, or one that is not there yet, with OUT_DIR.';

/** What a place holds or lies in that a build must not touch; null when there is nothing. */
function touched(out: string, { root, content, home }: Surroundings): string | null {
  const project = followed(root);
  if (out === project) return 'is the project itself';
  for (const folder of content.map(followed)) {
    if (out === folder) return 'is the folder of your records';
    if (isWithin(out, folder)) return 'holds the folder of your records';
    if (isWithin(folder, out)) return 'lies in the folder of your records';
  }
  if (isWithin(out, project)) return 'holds the project';
  const [first] = relative(project, out).split(sep);
  if (isWithin(project, out) && programFolders.includes(first!.toLowerCase()))
    return `lies in ${first}, which belongs to the program`;
  const own = followed(home);
  if (out === own) return 'is your home folder';
  if (isWithin(out, own)) return 'holds your home folder';
  if (out.split(sep).includes('.git')) return 'lies in the folder where git keeps its versions';
  return null;
}

/**
 * Follows a path to the folder that a site is put in. Throws an OutputError for a place where it would destroy or disturb something
 * else, wherever that place is: it looks at the place only, not at what is in it.
 */
export function outputFolder(asked: string, around: Surroundings): string {
  const refuse = (why: string, what = remedy) => {
    throw new OutputError(`no site is built into ${asked}: it ${why}. ${what}`);
  };
  const out = followed(asked);
  const there = lstatSync(out, { throwIfNoEntry: false });
  if (there?.isSymbolicLink())
    refuse('is a link that leads nowhere', 'Make the folder it leads to, or name another with OUT_DIR.');
  const why = touched(out, around);
  if (why !== null) refuse(why);
  if (there && !there.isDirectory()) refuse('is a file, not a folder');
  if (there && isMountPoint(out))
    refuse(
      'is where a disk of its own begins, and a build exchanges whole folders',
      `Name a folder in it with OUT_DIR, such as ${join(asked, 'site')}.`,
    );
  return out;
}

/** Throws an OutputError unless sites can be made beside a folder and renamed to it. */
export function assertWritable(out: string): void {
  try {
    accessSync(dirname(out), constants.W_OK | constants.X_OK);
  } catch {
    throw new OutputError(
      `no site is built into ${out}: nothing may be written into ${dirname(out)}, and the site is made there before it is put in place. ${remedy}`,
    );
  }
}

/**
 * Throws an OutputError unless a folder is missing, empty, or holds an earlier site of this yard, which is known by its name or its address.
 * `anyYard` takes the site of another yard too: the folder that is the project's own for sites.
 */
export function assertReplaceable(out: string, yard: SiteMark, anyYard: boolean): void {
  if (!existsSync(out) || readdirSync(out).length === 0) return;
  const refuse = (why: string, what: string) => {
    throw new OutputError(`no site is built into ${out}: ${why}. ${what}`);
  };
  if (existsSync(join(out, '.git')))
    refuse('it holds a git repository, which a build would remove with the rest', remedy);
  const mark = readMark(out);
  if (mark === null)
    refuse(
      'it is not empty, and what is in it was not made by a build of this yard',
      `${remedy} If nothing in it is wanted any more, empty it first.`,
    );
  if (anyYard || mark?.yard === yard.yard || (mark?.address !== null && mark?.address === yard.address))
    return;
  refuse(
    `it holds the site of another yard, ${mark?.yard ?? mark?.address ?? 'of no name'}`,
    `${remedy} If that site is not wanted any more, empty the folder first.`,
  );
}
