import { expect, test } from 'vitest';
import { day } from '../days.ts';
import { firstAddresses } from './firstNames.ts';
import { ledgerOf } from './ledger.ts';

function firstOf(...lines: [address: string, leadsTo?: string][]) {
  const rows = lines.map(([address, leadsTo], index) => ({
    address,
    since: day('2026-01-01'),
    leadsTo: leadsTo ?? null,
    line: index + 2,
  }));
  return Object.fromEntries(firstAddresses(ledgerOf(rows)));
}

const [a, b, c] = ['/guides/a/', '/guides/b/', '/guides/c/'];

test('renamed once, twice, twice between two publications, and back', () => {
  expect(firstOf([a])).toEqual({});
  expect(firstOf([a], [a, b])).toEqual({ [b]: a });
  expect(firstOf([a], [a, b], [b], [b, c], [a, c], [c])).toMatchObject({ [c]: a });
  expect(firstOf([a], [a, b], [b, c], [a, c], [c])).toMatchObject({ [c]: a });
  expect(firstOf([a], [a, b], [b], [b, a], [a])[a]).toBeUndefined();
});

test('what was led to a page that was there already, and what is no record of its kind, is none of its names', () => {
  expect(firstOf([a], [b], [a, b])).toEqual({});
  expect(firstOf(['/go/3467/', a], [a])).toEqual({});
  expect(firstOf(['/places/a/'], ['/places/a/', a], [a])).toEqual({});
});
