/** Files a yard cannot do without. */

import type { FileKind } from './layout.ts';
import { type Problem, wholeFile } from './problem.ts';
import type { SourceFile } from './read.ts';

const required: readonly { kind: FileKind; path: string; what: string }[] = [
  { kind: 'yard', path: 'yard.yaml', what: 'yard.yaml' },
  { kind: 'species', path: 'species/', what: 'a species: a file such as species/fig.yaml' },
  { kind: 'cultivar', path: 'cultivars/', what: 'a cultivar: a file such as cultivars/bellwether.md' },
  { kind: 'lots', path: 'lots/', what: 'a list of lots: a file such as lots/2026-layers.yaml' },
  { kind: 'place', path: 'places/', what: 'a place: a file such as places/home-town.yaml' },
];

/** One problem when there is nothing at all, else one for each kind of record that is missing. */
export function missingFiles(files: readonly SourceFile[], kinds: ReadonlySet<FileKind>): Problem[] {
  if (files.length === 0) {
    return [
      {
        rule: 'content-missing',
        file: '',
        spot: wholeFile,
        expected: required.map(({ path }) => path).join(', '),
        message: 'there is no content folder here, or nothing is in it',
        remedy: 'look for a slip in its name, or in CONTENT_DIR if that is set.',
      },
    ];
  }
  // What stands in the place of a folder, or could not be read, is told by itself.
  const told = new Set(files.map(({ path }) => path));
  return required
    .filter(({ kind, path }) => !kinds.has(kind) && !told.has('') && !told.has(path.replace(/\/$/, '')))
    .map(({ path, what }) => ({
      rule: 'file-missing',
      file: path,
      spot: wholeFile,
      expected: what,
      message: `${path} is missing`.replace('/ is missing', '/ has no files'),
      remedy: `add ${what}.`,
    }));
}
