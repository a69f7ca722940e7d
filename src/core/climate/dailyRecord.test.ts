import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addDays, type Day, day } from '../days.ts';
import { randomFromText } from '../random.ts';
import { normalisePlace, type WrittenPlace } from '../records/place.ts';
import { dailyRecordFigures } from './dailyRecord.ts';
import { readDailyRecord } from './dailyRecordText.ts';
import type { DayRow } from './dailyRows.ts';
import { figuresOfPlace, withDailyRecord } from './place.ts';

/**
 * NOAA GHCN-Daily, station USC00010655 (Belle Mina 2 N, Alabama), July 2010 to July 2022: twelve whole seasons, public domain,
 * put into our own columns. The figures expected below were worked out from the same days by a separate computation.
 */
const text = readFileSync(
  new URL('../../../tests/fixtures/daily/belle-mina-2010-2022.csv', import.meta.url),
  'utf8',
);
const belleMina = { lat: 34.69 };
const rows = readDailyRecord(text).rows;

function record(from: Day, count: number, tmin: (i: number) => number | null): DayRow[] {
  return Array.from({ length: count }, (_, i) => {
    const tminC = tmin(i);
    return { day: addDays(from, i), tminC, tmaxC: tminC === null ? null : tminC + 10 };
  });
}

describe('twelve seasons at Belle Mina', () => {
  const figures = dailyRecordFigures(rows, belleMina.lat)!;

  test('monthly means', () => {
    const tminC = [-1.43, 0.41, 4.6, 8.23, 13.93, 18.43, 20.28, 19.15, 15.74, 9.42, 2.57, 1.08];
    const tmaxC = [9.91, 12.61, 17.66, 21.93, 26.57, 30.74, 32.09, 31.42, 29.24, 23.71, 16.56, 12.62];
    expect(figures.tminC.map(value => Number(value.toFixed(2)))).toEqual(tminC);
    expect(figures.tmaxC.map(value => Number(value.toFixed(2)))).toEqual(tmaxC);
  });

  test('standard deviation about the smooth curve, and lag-1', () => {
    const sdTminC = [6.42, 5.8, 5.39, 4.56, 3.68, 2.53, 1.97, 2.42, 3.66, 5.03, 5.54, 6.26];
    const sdTmaxC = [6.34, 6.57, 5.94, 4.77, 4.08, 2.98, 2.96, 2.85, 3.96, 4.45, 5.21, 5.8];
    for (let month = 0; month < 12; month += 1) {
      expect(Math.abs(figures.sdTminC[month]! - sdTminC[month]!)).toBeLessThan(0.015);
      expect(Math.abs(figures.sdTmaxC[month]! - sdTmaxC[month]!)).toBeLessThan(0.015);
    }
    expect(figures.lag1).toBeCloseTo(0.712, 2);
  });

  test('first and last freezes: the 2nd, 6th and 11th of twelve dates', () => {
    // 32 F, first of each season from 2010: 10-30, 10-21, 10-31, 10-25, 11-02, 10-20, 11-11, 10-30, 11-10, 11-01, 11-03, 11-08.
    expect(figures.freeze?.get(32)).toEqual({
      first: { p10: '10-21', p50: '10-31', p90: '11-10' },
      last: { p10: '03-15', p50: '03-29', p90: '04-17' },
      none: 0,
    });
    // 20 F: the middle of the season lies either side of the new year.
    expect(figures.freeze?.get(20)?.first).toEqual({ p10: '11-14', p50: '12-08', p90: '01-11' });
    // 28 F is written -2.2 C and 24 F -4.4 C in a record of tenths; both count.
    expect(figures.freeze?.get(28)?.first).toEqual({ p10: '10-29', p50: '11-09', p90: '11-24' });
    expect(figures.freeze?.get(24)?.last).toEqual({ p10: '02-13', p50: '02-23', p90: '03-22' });
  });

  test('the coldest nights: -16.1 -10 -7.8 -16.1 -15 -10 -12.8 -14.4 -7.8 -8.9 -11.7 -8.9', () => {
    expect(figures.annualMinMeanC).toBeCloseTo(-11.625, 6);
    expect(figures.seasons).toBe(12);
  });

  test('the seven days without a reading of both are told, and nothing else', () => {
    expect(figures.notes).toEqual([
      { kind: 'unread', text: '7 days of 4414 have no reading of both temperatures.' },
    ]);
  });
});

describe('gaps', () => {
  const start = day('2010-07-24');
  const mild = (i: number) => 10 + 8 * Math.cos((2 * Math.PI * i) / 365.25);
  const holes = (count: number) =>
    record(start, 365 * 2, i => (i >= 100 && i < 100 + count ? null : mild(i)));

  test('ten missing days keep a season, eleven void it', () => {
    expect(dailyRecordFigures(holes(10), 40)?.seasons).toBe(2);
    expect(dailyRecordFigures(holes(11), 40)?.seasons).toBe(1);
    expect(dailyRecordFigures(holes(11), 40)?.notes).toContainEqual({
      kind: 'left-out',
      text: '1 season with more than 10 days missing left out of the freeze dates.',
    });
  });

  test('a season is whole from July 24 in the north, from January 24 in the south', () => {
    expect(dailyRecordFigures(record(day('2010-01-24'), 365, mild), -35)?.seasons).toBe(1);
    expect(dailyRecordFigures(record(day('2010-01-24'), 365, mild), 35)?.seasons).toBe(0);
    const voided = record(day('2010-01-24'), 365, i => (i >= 100 && i < 111 ? null : mild(i)));
    expect(dailyRecordFigures(voided, -35)).toMatchObject({ seasons: 0, freeze: null, annualMinMeanC: null });
  });

  test('a month with under twenty days does not enter its mean', () => {
    const cold = record(start, 720, i => (i < 8 || i >= 708 ? -50 : mild(i)));
    const july = dailyRecordFigures(cold, 40)?.tminC[6];
    expect(july).toBeCloseTo([...Array(31).keys()].reduce((sum, i) => sum + mild(342 + i), 0) / 31, 6);
  });

  test('a short record warns; one that lacks a month gives nothing', () => {
    expect(dailyRecordFigures(holes(0), 40)?.notes.at(-1)?.text).toMatch(
      /^Only 2 whole years: fewer than 10/,
    );
    expect(dailyRecordFigures(record(start, 200, mild), 40)).toBeNull();
    expect(dailyRecordFigures([], 40)).toBeNull();
  });
});

test('a place without frost has no dates in any share of years', () => {
  const warm = dailyRecordFigures(
    record(day('2000-07-24'), 365 * 12 + 3, () => 20),
    21,
  )!;
  expect(warm.freeze?.get(36)).toEqual({
    first: { p10: null, p50: null, p90: null },
    last: { p10: null, p50: null, p90: null },
    none: 1,
  });
});

test('spread and lag-1 of a made series come back', () => {
  const chance = randomFromText('a made series');
  const normals = new Float64Array(365 * 60);
  chance.fillNormal(normals);
  let z = 0;
  const made = record(day('1950-01-01'), normals.length, i => {
    z = 0.6 * z + Math.sqrt(1 - 0.36) * normals[i]!;
    return 5 + 12 * Math.sin((2 * Math.PI * i) / 365.25) + 4 * z;
  });
  const figures = dailyRecordFigures(made, 45)!;
  for (const sd of figures.sdTminC) expect(sd).toBeCloseTo(4, 0);
  expect(figures.lag1).toBeCloseTo(0.6, 1);
});

describe('a place that gives a daily record', () => {
  const written: WrittenPlace = {
    name: 'Belle Mina',
    region: 'Alabama',
    country: 'US',
    lat: 34.69,
    lon: -86.88,
    elevation_m: 184,
    daily: 'belle-mina.csv',
    period: '2010-2022',
    source: 'NOAA GHCN-Daily USC00010655',
    terms: 'public domain',
  };
  const place = normalisePlace('belle-mina-al', written);

  test('has its figures taken from it', () => {
    const figures = figuresOfPlace(place, text);
    expect(figures.tminC[0]).toBeCloseTo(-1.43, 2);
    expect(figures.sdAbout).toBe('curve');
    expect(figures.lag1).toBeCloseTo(0.712, 2);
    expect(figures.published.freeze.get(32)?.first.p50).toBe('10-31');
    expect(figures.published.annualMin?.meanC).toBeCloseTo(-11.625, 6);
    // -11.6 C is 11.1 F: zone 8a, 10 to 15 F (USDA Plant Hardiness Zone Map, 2023).
    expect(figures.published.winterZone?.zone).toBe('8a');
  });

  test('keeps what its own record says', () => {
    const own = normalisePlace('belle-mina-al', {
      ...written,
      winter_zone: { zone: '7b', basis: '2023 map' },
      lag1: 0.5,
    });
    const figures = figuresOfPlace(own, text);
    expect(figures.published.winterZone?.zone).toBe('7b');
    expect(figures.lag1).toBe(0.5);
  });

  test('takes no freeze dates or zone from under ten whole years', () => {
    const short = text
      .split('\n')
      .slice(0, 366 * 4)
      .join('\n');
    const { place: filled, notes } = withDailyRecord(place, short);
    expect(filled.freeze).toBeNull();
    expect(filled.winterZone).toBeNull();
    expect(filled.tminC).toHaveLength(12);
    expect(notes.join()).toMatch(/Only 3 whole years/);
  });

  test('is refused in words when the record cannot be used', () => {
    expect(() => figuresOfPlace(place)).toThrow('the daily record belle-mina.csv was not read');
    expect(() => figuresOfPlace(place, 'a,b\n1,2')).toThrow(
      /belle-mina\.csv: a daily record has the columns/,
    );
    expect(() => figuresOfPlace(place, 'date,tmin_c,tmax_c\n2024-01-01,1,2')).toThrow(/too few days/);
  });
});
