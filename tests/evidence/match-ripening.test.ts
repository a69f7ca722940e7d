/** Ripening against long daily records: dates, and how often. */

import { describe, expect, it } from 'vitest';
import { calibration } from '../../src/core/evidence/matchCalibration.ts';
import { matchTables } from '../../src/core/evidence/matchTables.ts';

const tables = matchTables();

/** Rows each table must have, so that none is skipped unseen. */
const rowCounts: Record<string, number> = { 'ripening-dates': 17, 'ripening-calibration': 21 };

describe.each(tables)('$title', ({ id, rows }) => {
  it('has every row', () => {
    expect(rows).toHaveLength(rowCounts[id]!);
  });

  it.each(rows)('$what: $expected $unit ($source)', row => {
    expect(row.ok, `expected ${row.expected} ${row.unit}, got ${row.got}`).toBe(true);
  });
});

describe('calibration over NOAA GHCN-Daily records', () => {
  const found = calibration();

  it('covers every need at every station', () => {
    expect(found.usual).toHaveLength(6 * 20);
    expect(found.hard).toHaveLength(6 * 15);
  });

  it('states a chance within 10 points of the observed share in 9 of 10 cases', () => {
    expect(found.statedWithin).toBeGreaterThanOrEqual(0.9);
    expect(found.sharpWithin).toBeGreaterThanOrEqual(0.9);
  });
});
