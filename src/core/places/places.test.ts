import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { WrittenPlace } from '../records/place.ts';
import { answersDraft } from './answers.ts';
import { addTo, finishDraft } from './draft.ts';
import { ghcnTerms } from './fromDailyRecord.ts';
import { placeText } from './placeText.ts';
import { kindOfSource } from './sourceFile.ts';
import { placeId, stationPlace } from './stationName.ts';
import { readMonths } from './twelve.ts';

const twelve = [8.4, 9, 11.7, 15, 18.4, 21.6, 23.9, 23.4, 20.2, 15.8, 11.5, 8.8];
const london: WrittenPlace = {
  name: 'London',
  region: 'England',
  country: 'GB',
  lat: 51.479,
  lon: -0.449,
  elevation_m: 25,
  tmax_c: twelve,
  tmin_c: twelve.map(value => value - 6),
  period: '1991-2020',
  source: 'Met Office',
  terms: 'Open Government Licence v3.0',
};

describe('the names of stations', () => {
  // Names as NOAA NCEI writes them in its station files.
  test.each([
    ['LEBANON MUNI AP, NH US', 'Lebanon', 'New Hampshire', 'US'],
    ['RICHMOND INTERNATIONAL AIRPORT, VA US', 'Richmond', 'Virginia', 'US'],
    ['SALT LAKE CITY INTL AP, UT US', 'Salt Lake City', 'Utah', 'US'],
    ['FRANKFURT MAIN, GM', 'Frankfurt Main', null, null],
    ['', null, null, null],
  ])('%s', (name, place, region, country) => {
    expect(stationPlace(name)).toEqual({ name: place, region, country });
  });

  test('ids are the name with the state or the country', () => {
    expect(placeId('St. Louis', 'Missouri', 'US')).toBe('st-louis-mo');
    expect(placeId('Adelaide', 'South Australia', 'AU')).toBe('adelaide-au');
    expect(placeId('Aydın-Söke', 'Aegean', 'TR')).toBe('aydin-soke-tr');
    expect(placeId('Victoria', 'Georgia', 'GE')).toBe('victoria-ge');
  });
});

describe('the text of a record', () => {
  test('has keys in the order of the schema and twelve numbers on a line', () => {
    const shuffled = Object.fromEntries(Object.entries(london).reverse()) as unknown as WrittenPlace;
    const lines = placeText(shuffled).split('\n');
    expect(lines[0]).toMatch(/^# yaml-language-server: \$schema=/);
    expect(lines.slice(1, 9).map(line => line.split(':')[0])).toEqual(
      'name region country lat lon elevation_m tmax_c tmin_c'.split(' '),
    );
    expect(lines[7]).toBe('tmax_c: [ 8.4, 9, 11.7, 15, 18.4, 21.6, 23.9, 23.4, 20.2, 15.8, 11.5, 8.8 ]');
  });

  test('quotes days, so that no reader takes them for anything else', () => {
    const freeze = { '32F': { first: { p10: '10-31', p50: null, p90: null }, none: 0.6 }, source: 'x' };
    expect(placeText({ ...london, freeze })).toContain('first: { p10: "10-31", p50: null, p90: null }');
  });

  test('reads back as it was, whatever is written in its texts', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 300, unit: 'grapheme' }), text => {
        const record = {
          ...london,
          name: text,
          source: `${text} ${text}: - # "${text}`,
          terms: ` ${text}\n${text} `,
        };
        expect(parse(placeText(record))).toEqual(record);
      }),
    );
  });
});

describe('drafts', () => {
  test('a figure given in one unit replaces the same figure in the other', () => {
    const added = addTo({ tmax_c: twelve, rain_mm: twelve }, { tmax_f: twelve });
    expect(added).toEqual({ tmax_f: twelve, rain_mm: twelve });
  });

  test('a whole one gets its id, a torn one its problems', () => {
    expect(finishDraft(london, null)).toEqual({ id: 'london-gb', record: london });
    expect(finishDraft({ ...london, lat: -51.479 }, null)).toMatchObject({ problems: [expect.any(String)] });
    const { period: _, ...torn } = london;
    expect(finishDraft(torn, null)).toEqual({ problems: ['period is not known; give --period.'] });
  });
});

test('months may be parted by spaces, commas or semicolons', () => {
  const text = twelve.join(' ');
  for (const parted of [text, text.replaceAll(' ', ', '), text.replaceAll(' ', ';')]) {
    expect(readMonths(parted)).toEqual(twelve);
  }
  expect(readMonths('1')).toBe('1 number instead of twelve, January to December');
  expect(answersDraft({ rain_mm: '-1' }).problems).toHaveLength(1);
});

test('sources are told apart by their header, with or without a byte order mark', () => {
  expect(kindOfSource('\uFEFF"STATION","DATE","MLY-TMAX-NORMAL"\n')).toBe('normals');
  expect(kindOfSource('Date,TMIN (F),TMAX (F)\r\n')).toBe('daily');
  expect(kindOfSource('STATION,DATE,PRCP')).toBeNull();
});

/**
 * Station numbers of NOAA GHCN-Daily (ghcnd-stations.txt): Heathrow, Lyon, Guam, San Juan, Central Park, and the number of a volunteers'
 * gauge (network code 1). From memory, but for the rule that the first two signs are the country and the third the network (readme).
 */
test('the terms of a station are those of who reads it', () => {
  for (const ours of ['USW00094728', 'USC00013519', 'GQW00041415', 'RQW00011641']) {
    expect(ghcnTerms(ours)).toMatch(/^US Government work/);
  }
  for (const theirs of ['UKM00003772', 'FRE00104907', 'CA001108395', 'ASN00023034']) {
    expect(ghcnTerms(theirs)).toMatch(/^Read by another country's weather service/);
  }
  expect(ghcnTerms('US1KYFY0001')).toMatch(/^Read by volunteers/);
});
