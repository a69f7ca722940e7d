/** The reference climates that are shipped: complete, well spread, and the figures their publishers gave. */

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { figuresOfPlace } from '../../src/core/climate/place.ts';
import { placeFaults } from '../../src/core/climate/placeFaults.ts';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { doyFromMonthDay } from '../../src/core/days.ts';
import { placeText } from '../../src/core/places/placeText.ts';
import { idPattern } from '../../src/core/records/common.ts';
import { normalisePlace, type Place, type WrittenPlace, writtenPlace } from '../../src/core/records/place.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius, inchesToMm } from '../../src/core/units.ts';

const folder = new URL('../../content/places/', import.meta.url);
const texts = new Map(
  readdirSync(folder)
    .filter(file => file.endsWith('.yaml'))
    .sort()
    .map(file => [file.replace('.yaml', ''), readFileSync(new URL(file, folder), 'utf8')]),
);

const written = new Map<string, WrittenPlace>();
const refused: string[] = [];
for (const [id, text] of texts) {
  const read = writtenPlace.safeParse(parse(text));
  if (read.success) written.set(id, read.data);
  else refused.push(`${id}: ${read.error.message}`);
}
const places = [...written].map(([id, record]) => normalisePlace(id, record));

function place(id: string): Place {
  const found = places.find(candidate => candidate.id === id);
  if (!found) throw new Error(`no place ${id}`);
  return found;
}

describe('every place record', () => {
  test('is accepted by the schema', () => {
    expect(refused).toEqual([]);
    expect(texts.size).toBeGreaterThanOrEqual(62);
  });

  test.each(places.map(each => [each.id, each] as const))('%s is complete', (id, each) => {
    expect(id).toMatch(idPattern);
    expect(id).not.toContain('dssat');
    expect(each.tminC).toHaveLength(12);
    each.tminC.forEach((low, month) => {
      expect(low, `month ${month + 1}`).toBeLessThan(each.tmaxC[month] as number);
    });
    expect(each.source).not.toMatch(/\.csv|\.gz|raw\/|here$/);
    expect(each.terms).not.toMatch(/tests only/i);
  });

  test('credits what the terms ask for', () => {
    for (const each of places) {
      const all = JSON.stringify(each);
      if (/CLIMAT|Deutscher Wetterdienst/.test(all))
        expect(each.terms, each.id).toMatch(/Deutscher Wetterdienst/);
      if (/Met Office/.test(each.source)) expect(each.terms, each.id).toMatch(/Open Government Licence/);
      if (/2023/.test(each.winterZone?.basis ?? '')) {
        expect(each.winterZone?.basis, each.id).toMatch(/USDA-ARS and Oregon State University/);
      }
    }
  });

  test('freeze dates run early to late within the season', () => {
    const seasonDay = (monthDay: string, lat: number) => {
      const [month, date] = monthDay.split('-').map(Number) as [number, number];
      return ((month * 31 + date - (lat < 0 ? 1 : 7) * 31 - 24 + 12 * 31) % (12 * 31)) as number;
    };
    let checked = 0;
    for (const { id, lat, freeze } of places) {
      for (const [threshold, at] of Object.entries(freeze?.at ?? {})) {
        for (const dates of [at.first, at.last]) {
          const days = [dates?.p10, dates?.p50, dates?.p90]
            .filter(monthDay => typeof monthDay === 'string')
            .map(monthDay => seasonDay(monthDay, lat));
          expect(days, `${id} ${threshold}`).toEqual([...days].sort((a, b) => a - b));
          checked += days.length;
        }
      }
    }
    expect(checked).toBeGreaterThan(100);
  });

  test('survives being written and read again', () => {
    for (const [id, record] of written) expect(parse(placeText(record)), id).toEqual(record);
  });
});

describe('the places together', () => {
  test('are in both hemispheres and outside the United States', () => {
    expect(places.filter(({ lat }) => lat < 0).length).toBeGreaterThanOrEqual(7);
    expect(places.filter(({ country }) => country === 'US').length).toBeGreaterThanOrEqual(42);
    expect(places.filter(({ country }) => country !== 'US').length).toBeGreaterThanOrEqual(20);
    expect(new Set(places.map(({ country }) => country)).size).toBeGreaterThanOrEqual(15);
  });

  test('hold every half zone from 4a to 10b, and colder and warmer ones', () => {
    const zones = new Set(places.map(each => each.winterZone?.zone));
    for (let zone = 4; zone <= 10; zone += 1) {
      for (const half of ['a', 'b']) expect(zones, `${zone}${half}`).toContain(`${zone}${half}`);
    }
    expect(zones).toContain('3a');
    expect(zones).toContain('11a');
  });

  test('include the home place of the demonstration yard', () => {
    expect(place('asheville-nc').region).toBe('North Carolina');
  });
});

type Series = 'tmaxC' | 'tminC' | 'rainMm';
const celsius = fahrenheitToCelsius;

/** Values typed by hand from the published rows, in the unit they are published in, and rounded as the records are. */
describe('published figures', () => {
  const january = 0;
  const july = 6;
  test.each([
    // NOAA/NCEI U.S. Climate Normals 1991-2020, monthly station file USW00094765: MLY-TMAX-, TMIN-, PRCP-NORMAL.
    ['lebanon-nh', 'tmaxC', january, celsius(30.3)],
    ['lebanon-nh', 'tminC', january, celsius(9.3)],
    ['lebanon-nh', 'tmaxC', july, celsius(82.7)],
    ['lebanon-nh', 'tminC', july, celsius(57.8)],
    ['lebanon-nh', 'rainMm', january, inchesToMm(2.29)],
    ['lebanon-nh', 'rainMm', july, inchesToMm(3.99)],
    // Deutscher Wetterdienst open data, monthly CLIMAT reports 2003-2021 averaged, in C and mm.
    // Asheville: WMO 72315, the airport. Richmond: WMO 72401. Phoenix: WMO 72278. Minneapolis: WMO 72658.
    ['richmond-va', 'tminC', january, -1.5],
    ['richmond-va', 'tmaxC', july, 32.3],
    ['phoenix-az', 'tmaxC', july, 41.6],
    ['minneapolis-mn', 'tminC', january, -12.5],
    ['asheville-nc', 'tminC', january, -2.3],
    ['asheville-nc', 'tmaxC', july, 29],
    ['beijing-cn', 'tminC', january, -6.9],
    ['adelaide-au', 'tmaxC', january, 29],
    ['tokyo-jp', 'rainMm', 9, 271.3],
    ['cape-town-za', 'rainMm', july, 77.9],
    // Met Office historic station data, means of 1991-2020.
    ['camborne-gb', 'tmaxC', july, 18.7],
  ] satisfies [string, Series, number, number][])('%s %s, month index %i', (id, series, month, published) => {
    expect(Math.abs((place(id)[series]?.[month] ?? Number.NaN) - published)).toBeLessThan(0.06);
  });

  test('freeze dates of Lebanon: 1991-2020 annual and seasonal station file USW00094765', () => {
    // PRBFST-T32FP10 09/23, P50 10/06, P90 10/19: 10 % of years have an earlier first freeze than September 23.
    expect(place('lebanon-nh').freeze?.at['32F']?.first).toEqual({
      p10: '09-23',
      p50: '10-06',
      p90: '10-19',
    });
    // PRBLST counts the other way: P10 05/11 is the date that 10 % of years pass, our late date p90.
    expect(place('lebanon-nh').freeze?.at['28F']?.last?.p90).toBe('05-11');
  });

  test('the home place is the airport of Asheville, with the NOAA dates of 1991-2020 (station USW00003812)', () => {
    const home = place('asheville-nc');
    expect(home.source).toContain('USW00003812');
    expect(home.freeze?.at['32F']).toMatchObject({ first: { p50: '10-28' }, last: { p50: '04-09' } });
    expect(home.freeze?.at['28F']).toMatchObject({ first: { p50: '11-08' }, last: { p50: '03-26' } });
    expect(home.winterZone?.zone).toBe('7b');
  });

  test('winter zones: 2023 USDA Plant Hardiness Zone Map, ZIP codes', () => {
    const published = {
      'phoenix-az': '10a',
      'seattle-wa': '9a',
      'minneapolis-mn': '5a',
      'international-falls-mn': '3a',
      'miami-fl': '11a',
    };
    for (const [id, zone] of Object.entries(published)) expect(place(id).winterZone?.zone, id).toBe(zone);
  });
});

describe('the figures of each place', () => {
  test('say their period, and say so when they were moved to another one', () => {
    for (const { id, period, source } of places) {
      expect(period, id).not.toBe('1981-2010');
      if (/moved/.test(period)) expect(source, id).toMatch(/moved by the change to 2003-2021/);
    }
  });

  test('have a measured spread, none an estimated one', () => {
    expect(places.filter(({ sd }) => sd === null).map(({ id }) => id)).toEqual([]);
  });

  test('are never called published when they were computed', () => {
    // Belle Mina and Paso Robles were computed from daily records.
    for (const id of ['belle-mina-al', 'paso-robles-ca', 'seattle-wa']) {
      const summary = climateSummary(figuresOfPlace(place(id)));
      expect(summary.freeze['32F'].standing, id).toBe('from records');
      expect(summary.annualMinC.standing, id).toBe('from records');
    }
  });

  test('have the spread of their neighbors', () => {
    // Duluth: 4.4 C in January by the harbor's old record, where the airport and every station around have 7 C.
    for (const { id, sd } of places.filter(each => ['duluth-mn', 'bismarck-nd'].includes(each.id))) {
      expect(sd?.tminC[0], id).toBeGreaterThan(6.5);
    }
  });

  test('freeze when the official tables of 1991-2020 say', () => {
    // NOAA NCEI, U.S. Climate Normals 1991-2020, middle 32 F dates, read in a compiled copy: last, first.
    const official = {
      'asheville-nc': ['04-09', '10-28'],
      'atlanta-ga': ['03-15', '11-20'],
      'boston-ma': ['04-04', '11-09'],
      'mobile-al': ['02-21', '12-06'],
    } as const;
    const days = (a: string, b: string) =>
      Math.abs((doyFromMonthDay(a) as number) - (doyFromMonthDay(b) as number));
    for (const [id, [last, first]] of Object.entries(official)) {
      const figures = figuresOfPlace(place(id));
      const modeled = climateSummary({ ...figures, published: { ...figures.published, freeze: new Map() } });
      expect(days(modeled.freeze['32F'].answer.last.p50 as string, last), id).toBeLessThanOrEqual(6);
      expect(days(modeled.freeze['32F'].answer.first.p50 as string, first), id).toBeLessThanOrEqual(11);
    }
  });
});

describe('the cross-field checks over every shipped place', () => {
  const faultsOf = (record: WrittenPlace) =>
    placeFaults(record, normalisePlace('here', record)).map(({ rule }) => rule);

  test('none has a fault', () => {
    for (const [id, record] of written) expect(faultsOf(record), id).toEqual([]);
  });

  test('all are asked about when their numbers are taken for the other unit', () => {
    for (const { id, tmaxC, tminC } of places) {
      const { tmax_c, tmin_c, tmax_f, tmin_f, ...rest } = written.get(id) as WrittenPlace;
      const asC = { ...rest, tmax_c: tmaxC.map(celsiusToFahrenheit), tmin_c: tminC.map(celsiusToFahrenheit) };
      const asF = { ...rest, tmax_f: tmaxC, tmin_f: tminC };
      expect(faultsOf(asC), id).toContain('place-unit');
      expect(faultsOf(asF), id).toContain('place-unit');
    }
  });

  test('all are caught with a latitude or longitude of the wrong sign', () => {
    for (const [id, record] of written) {
      expect(faultsOf({ ...record, lat: -record.lat }), `${id} lat`).toContain('place-position');
      if (Math.abs(record.lon) < 10) continue;
      expect(faultsOf({ ...record, lon: -record.lon }), `${id} lon`).toContain('place-position');
    }
  });
});
