import type { Draft } from '../draft.ts';
import { atValue, type KeyPath, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';

interface List {
  file: string;
  path: KeyPath;
  /** What is compared, in the list's order, with the key inside an entry where it stands. */
  items: readonly string[];
  key?: string;
}

/** Nothing stands twice in a list of different things. */
export const listedTwice: Check = draft => listsOf(draft).flatMap(repeats);

function listsOf({ yard, cultivars, lots, guides }: Draft): List[] {
  const ofYard: List[] = yard
    ? [
        {
          file: yard.file,
          path: ['flavor_classes'],
          key: 'id',
          items: yard.written.flavor_classes.map(({ id }) => id),
        },
        {
          file: yard.file,
          path: ['smallest'],
          key: 'container',
          items: yard.written.smallest.map(({ container }) => container),
        },
        { file: yard.file, path: ['sending', 'weekdays'], items: yard.written.sending.weekdays },
      ]
    : [];
  const ofCultivars = cultivars.flatMap(({ file, written }): List[] => [
    { file, path: ['crops'], items: written.crops },
    ...(['winter', 'season', 'air'] as const).map(
      (axis): List => ({ file, path: ['suits', axis], items: written.suits?.[axis] ?? [] }),
    ),
  ]);
  const ofLots = lots.map(
    ({ file, index, written }): List => ({ file, path: [index, 'forms'], items: written.forms }),
  );
  const ofGuides = guides.flatMap(({ file, written }): List[] => [
    { file, path: ['species'], items: written.species ?? [] },
    { file, path: ['forms'], items: written.forms ?? [] },
  ]);
  return [...ofYard, ...ofCultivars, ...ofLots, ...ofGuides];
}

function repeats({ file, path, items, key }: List): Problem[] {
  return items.flatMap((item, index) =>
    items.indexOf(item) === index
      ? []
      : [
          {
            rule: 'listed-twice' as const,
            file,
            spot: atValue(...path, index, ...(key === undefined ? [] : [key])),
            got: quote(item),
            expected: 'each once',
            message: `${quote(item)} stands twice in "${path.at(-1)}"`,
            remedy: 'take one of the two out.',
          },
        ],
  );
}
