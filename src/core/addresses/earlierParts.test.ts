import { expect, test } from 'vitest';
import { day } from '../days.ts';
import { earlierParts, oldNames } from './earlierParts.ts';
import { ledgerOf } from './ledger.ts';

function earlierOf(...lines: [address: string, leadsTo?: string][]) {
  const rows = lines.map(([address, leadsTo], index) => ({
    address,
    since: day('2026-01-01'),
    leadsTo: leadsTo ?? null,
    line: index + 2,
  }));
  return Object.fromEntries(
    [...earlierParts(ledgerOf(rows))].map(([page, parts]) => [page, Object.fromEntries(parts)]),
  );
}

test('a part renamed, renamed again, and on a page that was renamed since', () => {
  const [a, b] = ['/guides/a/', '/guides/b/'];
  expect(earlierOf([`${a}#x`], [`${a}#x`, `${a}#y`])).toEqual({ [a]: { x: `${a}#y` } });
  expect(earlierOf([`${a}#x`, `${a}#y`], [`${a}#y`, `${a}#z`])).toEqual({
    [a]: { x: `${a}#z`, y: `${a}#z` },
  });
  expect(earlierOf([`${a}#x`, `${b}#y`], [a, b])).toEqual({ [b]: { x: `${b}#y` } });
  expect(earlierOf([`${a}#x`, `${b}#y`])).toEqual({ [a]: { x: `${b}#y` } });
});

test('nothing is needed for a part that is back, leads to the whole page, or has its old name on the new page', () => {
  const [a, b] = ['/guides/a/', '/guides/b/'];
  expect(earlierOf([`${a}#x`, `${a}#y`], [`${a}#x`])).toEqual({});
  expect(earlierOf([`${a}#x`, a])).toEqual({});
  expect(earlierOf([`${a}#x`, `${b}#x`], [a, b])).toEqual({});
  expect(earlierOf([`${a}#x`, `${a}#y`], [`${a}#y`, `${a}#x`])).toEqual({});
});

test('old names stand at the part of today; a name that a part has again is left to it', () => {
  const earlier = new Map([
    ['x', '/guides/a/#z'],
    ['y', '/guides/a/#z'],
    ['w', '/guides/a/#z'],
    ['v', '/guides/b/#v'],
    ['u', '/guides/b/'],
  ]);
  expect(oldNames(earlier, '/guides/a/', new Set(['w', 'z']))).toEqual({
    here: new Map([['z', ['x', 'y']]]),
    elsewhere: [
      { name: 'v', to: '/guides/b/#v' },
      { name: 'u', to: '/guides/b/' },
    ],
  });
  expect(oldNames(undefined, '/guides/a/', new Set())).toEqual({ here: new Map(), elsewhere: [] });
});
