import type { Draft } from '../draft.ts';
import { privateFolder } from '../layout.ts';
import { atCell, atKey, both, type Problem, type Spot } from '../problem.ts';
import type { Check } from './check.ts';

interface Found {
  file: string;
  spot: Spot;
  what: string;
}

function foundIn({ yard, cultivars, lots, walks, walkNotes }: Draft): Found[] {
  const isWalk = new Set(walks.map(({ file }) => file));
  const note = 'private notes';
  const has = (file: string, spot: Spot, what: string, value: unknown): Found[] =>
    value === undefined ? [] : [{ file, spot, what }];
  return [
    ...(yard
      ? [
          ...has(yard.file, atKey('costs'), 'costs', yard.written.costs),
          ...has(yard.file, atKey('private_note'), note, yard.written.private_note),
        ]
      : []),
    ...cultivars.flatMap(({ file, written }) => [
      ...has(file, atKey('requests'), 'requests', written.requests),
      ...has(file, atKey('private_note'), note, written.private_note),
    ]),
    ...lots.flatMap(({ file, index, written }) =>
      has(file, atKey(index, 'private_note'), note, written.private_note),
    ),
    ...walkNotes
      .filter(({ file }) => isWalk.has(file))
      .map(({ file, line }): Found => ({ file, spot: atCell(line, 'note'), what: 'notes of walks' })),
  ];
}

/** One line for all: what is private and stands in files that everybody reads who can see the repository. */
export const privateInPublic: Check = draft => {
  const found = foundIn(draft);
  const [first] = found;
  if (!first) return [];
  const what = both([...new Set(found.map(each => each.what))]);
  const more = new Set(found.map(({ file }) => file)).size - 1;
  const files = more === 0 ? '' : more === 1 ? ', and in one more file' : `, and in ${more} more files`;
  return [
    {
      rule: 'private-in-public',
      file: first.file,
      spot: first.spot,
      got: what,
      expected: `the private folder, content/${privateFolder}/`,
      message: `${what} stand here${files}; a public repository shows them to everyone, in every version it keeps`,
      remedy: `the site never shows them; keep the repository private, or move them to content/${privateFolder}/, which git leaves out.`,
    } satisfies Problem,
  ];
};
