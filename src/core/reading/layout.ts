/** Which file holds what: the names a content folder may have. */

import { idPattern } from '../records/common.ts';
import { nearest } from './nearest.ts';
import { meant, type Problem, quote, remedyOf, wholeFile } from './problem.ts';

/** What tells people of the folder: no record. */
const readmeName = 'README.md';

/** What a file is, by its path. `daily` is a place's daily record; `ignored` is none of the reading's business. */
export type FileKind =
  | 'yard'
  | 'species'
  | 'cultivar'
  | 'lots'
  | 'walk'
  | 'place'
  | 'daily'
  | 'guide'
  | 'video'
  | 'temperatures'
  | 'addresses'
  | 'private-yard'
  | 'private-cultivar'
  | 'private-lots'
  | 'private-walk'
  | 'private-sales'
  | 'private-reservations'
  | 'private-waiting'
  | 'changes'
  | 'ignored'
  | 'stray';

interface Folder {
  kind: FileKind;
  ending: string;
  holds: string;
}

const folders: Record<string, Folder> = {
  species: { kind: 'species', ending: '.yaml', holds: 'one species per file' },
  cultivars: { kind: 'cultivar', ending: '.md', holds: 'one cultivar per file' },
  lots: { kind: 'lots', ending: '.yaml', holds: 'a list of lots per file' },
  walks: { kind: 'walk', ending: '.csv', holds: 'one walk per file, named after its day' },
  places: { kind: 'place', ending: '.yaml', holds: 'one place per file' },
  guides: { kind: 'guide', ending: '.md', holds: 'one guide per file' },
  videos: { kind: 'video', ending: '.yaml', holds: 'one video per file' },
};

/** Files at the top of the content folder. */
const topFiles: Record<string, FileKind> = {
  'yard.yaml': 'yard',
  'temperatures.csv': 'temperatures',
  'addresses.csv': 'addresses',
  'changes.jsonl': 'changes',
};

/** Below the private folder, which may hold what is private of four kinds of records, and three tables of orders. */
const privateKinds: readonly (readonly [RegExp, FileKind])[] = [
  [/^yard\.yaml$/, 'private-yard'],
  [/^cultivars\/[^/]+\.yaml$/, 'private-cultivar'],
  [/^lots\/[^/]+\.yaml$/, 'private-lots'],
  [/^walks\/[^/]+\.csv$/, 'private-walk'],
  [/^sales\.csv$/, 'private-sales'],
  [/^reservations\.csv$/, 'private-reservations'],
  [/^waiting\.csv$/, 'private-waiting'],
];

/** The private folder below the content folder; where it lies elsewhere, its files are read under this name. */
export const privateFolder = 'private';

/** What a file is. README.md, files whose name starts with a dot, and everything in photos are left alone. */
export function kindOf(path: string): FileKind {
  const parts = path.split('/');
  const name = parts.at(-1) ?? '';
  if (
    path === readmeName ||
    parts.some(part => part.startsWith('.')) ||
    (parts[0] === 'photos' && parts.length > 1)
  )
    return 'ignored';
  if (parts[0] === privateFolder && parts.length > 1) {
    const below = parts.slice(1).join('/');
    return privateKinds.find(([pattern]) => pattern.test(below))?.[1] ?? 'stray';
  }
  if (parts.length === 1) return Object.hasOwn(topFiles, name) ? topFiles[name]! : 'stray';
  if (parts.length !== 2) return 'stray';
  const folder = folderOf(path);
  if (!folder) return 'stray';
  if (parts[0] === 'places' && name.endsWith('.csv')) return 'daily';
  return name.endsWith(folder.ending) ? folder.kind : 'stray';
}

function folderOf(path: string): Folder | undefined {
  const [name = ''] = path.split('/');
  return Object.hasOwn(folders, name) ? folders[name] : undefined;
}

/** The file's name without folder and ending. */
export function stem(path: string): string {
  return (path.split('/').at(-1) ?? '').replace(/\.[^.]*$/, '');
}

/** A file the reading has no use for, with where it may belong. */
export function strayFile(path: string): Problem {
  const [first = ''] = path.split('/');
  if (first === privateFolder && path.includes('/')) {
    return {
      rule: 'stray-file',
      file: path,
      spot: wholeFile,
      got: path,
      expected:
        'private/yard.yaml, private/cultivars/ID.yaml, private/lots/NAME.yaml, private/walks/DAY.csv or a table of orders',
      message: 'the file is not read, since nothing is known by this name in the private folder',
      remedy:
        'the private folder holds yard.yaml, cultivars/ID.yaml, lots/NAME.yaml, walks/DAY.csv, sales.csv, reservations.csv and waiting.csv.',
    };
  }
  const folder = folderOf(path);
  const base = { rule: 'stray-file', file: path, spot: wholeFile, got: path } as const;
  if (folder && path.split('/').length === 2) {
    const name = `${stem(path)}${folder.ending}`;
    return {
      ...base,
      expected: `a name that ends in ${folder.ending}`,
      message: `the file is not read, since files in content/${first}/ end in ${folder.ending}`,
      remedy: `rename it to ${quote(name)}, or take it out of the content folder.`,
    };
  }
  if (folder && path.includes('/')) {
    return {
      ...base,
      expected: `a file straight in content/${first}/`,
      message: `the file is not read, since content/${first}/ has no folders inside it`,
      remedy: `move it up into content/${first}/, or take it out of the content folder.`,
    };
  }
  if (folder || path === 'photos') {
    return {
      ...base,
      rule: 'file-unreadable',
      expected: 'a folder',
      message: `this is a file where the folder content/${path}/ is needed`,
      remedy: 'rename the file, or take it out of the content folder.',
    };
  }
  const guess = path.includes('/')
    ? nearest(first, Object.keys(folders))
    : nearest(path, Object.keys(topFiles));
  return {
    ...base,
    expected: `one of ${[...Object.keys(topFiles), ...Object.keys(folders).map(name => `${name}/`)].join(', ')}`,
    message: 'the file is not read, since nothing is known by this name',
    remedy: remedyOf(meant(guess), 'Take it out of the content folder if it is no record.'),
  };
}

/** Checks that a file's name is an id; null when it is. */
export function badFileName(path: string): Problem | null {
  const id = stem(path);
  if (idPattern.test(id) && id.length <= 64) return null;
  const ending = path.slice(path.lastIndexOf('.'));
  const better = slug(id);
  return {
    rule: 'file-name',
    file: path,
    spot: wholeFile,
    got: id,
    expected: 'lower-case letters, digits and single hyphens, at most 64 in all',
    message: `the file's name ${quote(id)} cannot be an id`,
    remedy: better
      ? `rename it to "${better}${ending}". Ids are lower-case letters, digits and single hyphens.`
      : 'rename it with lower-case letters, digits and single hyphens only.',
  };
}

/** The nearest id to any text: `Fig One` gives `fig-one`; '' when nothing is left. */
export function slug(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 64)
    .replace(/^-+|-+$/g, '');
}
