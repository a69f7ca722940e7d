import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogueOf, hills, worldRecords } from '../../tests/world.ts';
import { normalisePlace, writtenPlace } from './records/place.ts';

/** Belle Mina, Alabama, 2010-2022. Source: NOAA NCEI, GHCN-Daily, station USC00010655. */
const dailyText = readFileSync(
  new URL('../../tests/fixtures/daily/belle-mina-2010-2022.csv', import.meta.url),
  'utf8',
);
const { tmax_c: _highs, tmin_c: _lows, sd: _spread, ...nameless } = hills;
const valley = normalisePlace(
  'valley',
  writtenPlace.parse({ ...nameless, lat: 34.6892, lon: -86.8819, daily: 'belle-mina.csv' }),
);

function recordsWithValley() {
  const records = worldRecords();
  records.places.set('valley', valley);
  records.dailyRecords.set('belle-mina.csv', dailyText);
  return records;
}

describe('places of the catalogue', () => {
  it('have the figures of their daily record', () => {
    const place = catalogueOf(recordsWithValley(), '2026-11-25').places.find(({ id }) => id === 'valley')!;
    expect(valley.tminC).toEqual([]);
    // Means of the same station, 2003-2024, as computed for the place record of Belle Mina: -1.7 C in January, 32.3 C in July.
    expect(Math.abs(place.tminC[0]! - -1.7)).toBeLessThan(1.5);
    expect(Math.abs(place.tmaxC[6]! - 32.3)).toBeLessThan(1.5);
    expect(place.sd?.source).toContain('belle-mina.csv');
    expect(place.freeze?.at['32F']?.first?.p50).toMatch(/^1[01]-/);
  });

  it('serve as home too', () => {
    const records = recordsWithValley();
    records.yard.home = 'valley';
    const { home, places } = catalogueOf(records, '2026-11-25');
    expect(home.tminC).toHaveLength(12);
    expect(places).toContain(home);
  });

  it('need the record they name', () => {
    const records = recordsWithValley();
    records.dailyRecords.clear();
    expect(() => catalogueOf(records, '2026-11-25')).toThrow(/belle-mina\.csv/);
  });
});
