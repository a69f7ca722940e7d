import { expect, test } from 'vitest';
import type { Catalogue, CultivarEntry } from '../../core/catalogue.ts';
import { day } from '../../core/days.ts';
import { listedCultivars, retiredInWords } from './raised.ts';

function entry(id: string, retired: string | null, soldOut: boolean[]): CultivarEntry {
  return {
    cultivar: { id, retired: retired === null ? null : day(retired) },
    lots: soldOut.map(gone => ({ soldOut: gone })),
  } as unknown as CultivarEntry;
}

test('the page of a retired cultivar says so', () => {
  const cultivars = [
    entry('raised', null, [true]),
    entry('last-plants', '2026-03-01', [true, false]),
    entry('past', '2026-03-01', [true]),
    entry('never-had', '2026-03-01', []),
    entry('later', '2026-12-01', [true]),
  ];
  const all = { asOf: day('2026-11-25'), cultivars } as unknown as Catalogue;
  expect(listedCultivars(all).map(({ cultivar }) => cultivar.id)).toEqual(['raised', 'last-plants', 'later']);
  expect(cultivars.map(each => retiredInWords(all, each))).toEqual([
    null,
    'We stopped raising it on March 1, 2026; what is on the list is the last of it.',
    'We stopped raising it on March 1, 2026; none is left.',
    'We stopped raising it on March 1, 2026; none is left.',
    null,
  ]);
});
