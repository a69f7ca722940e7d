/** Prices, parcels and measures against figures from outside the project. */

import { describe, expect, it } from 'vitest';
import { lotsTables as tables } from '../../src/core/evidence/lotsTables.ts';

/** Rows each table must have, so that none is skipped unseen. */
const rowCounts: Record<string, number> = {
  units: 14,
  containers: 31,
  'price-ladder': 55,
  costs: 9,
  parcels: 25,
  practice: 4,
};

describe.each(tables)('$title', ({ id, rows }) => {
  it('has every row', () => {
    expect(rows).toHaveLength(rowCounts[id]!);
  });

  it.each(rows)('$what: $expected $unit ($source)', row => {
    expect(row.ok, `expected ${row.expected} ${row.unit}, got ${row.got}`).toBe(true);
  });
});

it('has every table', () => {
  expect(tables.map(({ id }) => id).sort()).toEqual(Object.keys(rowCounts).sort());
});
