/** Every row of evidence: published examples, long records, the zone map. Sources stand in the rows. */
import { describe, expect, it } from 'vitest';
import { evidenceTables } from '../../src/core/evidence/evidence.ts';
import { freezeStations, placesWithZone } from '../../src/core/evidence/stationFigures.ts';

const tables = evidenceTables();

/** Rows each table must have, counted in the sources: a row that vanishes is a row that is no longer checked. */
const rowCounts = {
  'freeze-errors': 30,
  'freeze-stations': 283,
  'freeze-none': 3,
  'winter-lows': 37,
  'winter-zone-errors': 56,
  'season-heat': 24,
  'estimated-spread': 12,
  'freeze-statistics': 33,
  'ripening-dates': 17,
  'ripening-calibration': 21,
  'daily-curve': 83,
  'degree-days-zalom': 24,
  'degree-days-uc-ipm': 134,
  'degree-days-average': 34,
  'day-length': 42,
  'hourly-temperatures': 54,
  chill: 36,
  'winter-zones': 97,
  'heat-zones': 28,
  humidity: 21,
  'pot-freeze': 11,
  watering: 39,
  'winter-trips': 100,
  storing: 16,
  units: 14,
  containers: 31,
  'price-ladder': 55,
  costs: 8,
  parcels: 25,
  practice: 4,
} as const;

describe.each(tables)('$title', ({ rows, notChecked }) => {
  it.each(rows)('$what', ({ ok, what, expected, got, tolerance, unit, source }) => {
    expect(ok, `${what}: got ${got}, expected ${expected} within ${tolerance} ${unit} (${source})`).toBe(
      true,
    );
  });

  it('names a source for every row and a reason for every row left out', () => {
    expect(rows.filter(({ source }) => source.trim().length < 10)).toEqual([]);
    expect(notChecked.filter(({ what, why }) => what.length < 5 || why.length < 10)).toEqual([]);
  });

  it('gives every number a finite value and a tolerance', () => {
    for (const { got, expected, tolerance } of rows) {
      if (typeof got !== 'number') continue;
      expect(Number.isFinite(got) && Number.isFinite(expected) && (tolerance ?? -1) >= 0).toBe(true);
    }
  });
});

describe('nothing is skipped', () => {
  it('has every table with every row', () => {
    expect(Object.fromEntries(tables.map(({ id, rows }) => [id, rows.length]))).toEqual(rowCounts);
  });

  it('compares at least 25 stations and 50 places with a zone of the 2023 map', () => {
    const stations = freezeStations();
    expect(stations.length).toBeGreaterThanOrEqual(25);
    expect(new Set(stations.map(({ name }) => name)).size).toBe(stations.length);
    expect(placesWithZone().length).toBeGreaterThanOrEqual(50);
  });

  it('would notice a model without a memory: the checks can fail', () => {
    const [independent, chained] = ['independent', 'correlation 0.7'].map(text =>
      tables
        .find(({ id }) => id === 'freeze-statistics')
        ?.rows.find(({ what }) => what.includes('10 nights of 5 C') && what.includes(text)),
    );
    expect(chained?.got).not.toBeCloseTo(independent?.got as number, 1);
  });
});
