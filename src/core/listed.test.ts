import { expect, test } from 'vitest';
import type { CultivarEntry } from './catalogue.ts';
import { day } from './days.ts';
import { listed } from './listed.ts';

function entry(id: string, retired: string | null, soldOut: boolean[]): CultivarEntry {
  return {
    cultivar: { id, retired: retired === null ? null : day(retired) },
    lots: soldOut.map(gone => ({ soldOut: gone })),
  } as unknown as CultivarEntry;
}

test('a retired cultivar is listed until its last plant is sold', () => {
  const cultivars = [
    entry('raised', null, [true]),
    entry('last-plants', '2026-03-01', [true, false]),
    entry('past', '2026-03-01', [true]),
    entry('today', '2026-11-25', []),
    entry('tomorrow', '2026-11-26', []),
  ];
  const found = listed({ asOf: day('2026-11-25'), cultivars });
  expect(found.map(({ cultivar }) => cultivar.id)).toEqual(['raised', 'last-plants', 'tomorrow']);
});
