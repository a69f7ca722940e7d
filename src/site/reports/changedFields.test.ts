/** Whatever field of whatever record is changed, it is told: no edit is passed over in silence. */

import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadYard, yardsFolder } from '../../../tests/yards/loadYard.ts';
import { assemble, type Catalogue } from '../../core/catalogue.ts';
import { recordChanges } from '../../core/comparison/recordChanges.ts';
import { day } from '../../core/days.ts';
import { readRecords } from '../../core/reading/read.ts';
import { recordSections } from './changedFields.ts';

const asOf = day('2026-11-25');
const { files, photos } = loadYard(join(yardsFolder, 'base'));
const records = readRecords(files, { asOf, photos }).records!;
const all = assemble(records, asOf, new Map());

/** What stands where nothing stood before, where a text would not do. */
const inPlaceOfNothing: Record<string, unknown> = {
  '.retired': '2026-11-01',
  '.hold': { since: '2026-11-01', why: 'A look.' },
  '.price': { minor: 4000, why: 'Few.' },
};

/** What a change puts in the place of a value: another of its kind. */
function another(value: unknown, path: string): unknown {
  if (typeof value === 'number') return value + 1;
  if (typeof value === 'boolean') return !value;
  if (typeof value === 'string') return /^\d{4}-\d\d-\d\d$/.test(value) ? '2026-01-31' : `${value}x`;
  return inPlaceOfNothing[path] ?? 'something';
}

/** Every way to change one value in a piece of data, each as a whole copy, with the path of what was changed. */
function mutants(value: unknown, path = ''): { path: string; value: unknown }[] {
  if (typeof value !== 'object' || value === null) return [{ path, value: another(value, path) }];
  const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return entries.flatMap(([key, item]) =>
    mutants(item, `${path}.${key}`).map(mutant => {
      const copy: unknown = Array.isArray(value) ? [...value] : { ...value };
      (copy as Record<string | number, unknown>)[key] = mutant.value;
      return { path: mutant.path, value: copy };
    }),
  );
}

/** Positions in files, which messages need and nobody sees. */
const unseen = /\.(?:file|index|bodyLine)$/;

const withFirst = <T>(items: readonly T[], first: T): T[] => [first, ...items.slice(1)];

const changed: [string, { path: string; catalogue: Catalogue }[]][] = [
  [
    'the yard',
    mutants(all.yard).map(({ path, value }) => ({ path, catalogue: { ...all, yard: value as never } })),
  ],
  ...(['species', 'guides', 'videos', 'places'] as const).map(
    (kind): [string, { path: string; catalogue: Catalogue }[]] => [
      kind,
      mutants(all[kind][0])
        .filter(({ path }) => path !== '.id')
        .map(({ path, value }) => ({
          path,
          catalogue: { ...all, [kind]: withFirst<unknown>(all[kind], value) },
        })),
    ],
  ),
  [
    'a cultivar',
    mutants(all.cultivars[0]!.cultivar)
      .filter(({ path }) => path !== '.id')
      .map(({ path, value }) => ({
        path,
        catalogue: {
          ...all,
          cultivars: withFirst(all.cultivars, { ...all.cultivars[0]!, cultivar: value as never }),
        },
      })),
  ],
  [
    'a lot',
    mutants(all.lots[0]!.lot)
      .filter(({ path }) => path !== '.id')
      .map(({ path, value }) => ({
        path,
        catalogue: { ...all, lots: withFirst(all.lots, { ...all.lots[0]!, lot: value as never }) },
      })),
  ],
];

describe('a changed value is told, in words', () => {
  it.each(changed)('of %s', (_name, mutated) => {
    const seen = mutated.filter(({ path }) => !unseen.test(path) || path.includes('photo'));
    expect(seen.length).toBeGreaterThan(4);
    for (const { path, catalogue } of seen) {
      const lines = recordSections(recordChanges(all, catalogue)).flatMap(section => section.lines);
      // Another name for one of several makes it a new one, and the old one is gone.
      if (lines.length !== 1)
        expect(
          lines.map(line => line.split(': ').at(-1)),
          path,
        ).toEqual(['new', 'taken out']);
      expect(lines.join('\n'), path).not.toMatch(/undefined|null|NaN|\[object|: $/m);
    }
  });

  it('and nothing is told where nothing changed', () => {
    expect(recordChanges(all, structuredClone(all))).toEqual([]);
  });
});
