import { describe, expect, test } from 'vitest';
import { normalisePlace, type WrittenPlace } from '../records/place.ts';
import { celsiusToFahrenheit } from '../units.ts';
import { positionFault } from './countryBoxes.ts';
import { placeFaults } from './placeFaults.ts';

/** NOAA/NCEI U.S. Climate Normals 1981-2010, Asheville, USW00053877, in C. */
const asheville: WrittenPlace = {
  name: 'Asheville',
  region: 'North Carolina',
  country: 'US',
  lat: 35.49,
  lon: -82.61,
  elevation_m: 655.6,
  tmax_c: [8.3, 10.3, 14.6, 19.4, 23.3, 26.2, 27.9, 27.4, 24.2, 19.9, 14.8, 9.1],
  tmin_c: [-4.8, -3.1, -0.1, 4.3, 9.2, 13.7, 15.8, 15.2, 11.6, 4.9, 0.1, -3.6],
  period: '1981-2010',
  source: 'NOAA/NCEI',
  terms: 'public domain',
};

function faults(change: Partial<WrittenPlace>, leftOut: (keyof WrittenPlace)[] = []) {
  const written = { ...asheville, ...change };
  for (const key of leftOut) delete written[key];
  return placeFaults(written, normalisePlace('here', written)).map(
    ({ rule, path, got, expected, message }) => ({ rule, path, got, expected, message }),
  );
}

function rules(change: Partial<WrittenPlace>, leftOut: (keyof WrittenPlace)[] = []) {
  return faults(change, leftOut).map(({ rule, path }) => `${rule} ${path}`);
}

test('a sound record has no faults', () => {
  expect(faults({})).toEqual([]);
  expect(faults({ daily: 'mine.csv' }, ['tmax_c', 'tmin_c'])).toEqual([]);
});

describe('which figures are given', () => {
  test('two units of one thing', () => {
    expect(rules({ tmin_f: new Array(12).fill(40) })).toEqual(['place-units tmin_f']);
  });

  test('no temperatures, half of them, or both kinds', () => {
    expect(rules({}, ['tmax_c', 'tmin_c'])).toEqual(['place-months ']);
    expect(rules({}, ['tmin_c'])).toEqual(['place-months ']);
    expect(rules({ daily: 'mine.csv' })).toEqual(['place-months daily']);
  });
});

test('a minimum above the maximum names the month', () => {
  const crossed = [...(asheville.tmin_c as number[])];
  crossed[3] = 20;
  expect(faults({ tmin_c: crossed })).toEqual([
    {
      rule: 'place-crossed',
      path: 'tmin_c.3',
      got: 'minimum 20 C above maximum 19.4 C',
      expected: 'a minimum below the maximum',
      message: 'In April the mean minimum is above the mean maximum.',
    },
  ]);
});

describe('the wrong unit is asked about', () => {
  const inF = (values: number[] | undefined) => values?.map(celsiusToFahrenheit) ?? [];

  test('Fahrenheit given as Celsius', () => {
    const [fault] = faults({ tmax_c: inF(asheville.tmax_c), tmin_c: inF(asheville.tmin_c) });
    expect(fault).toMatchObject({
      rule: 'place-unit',
      path: 'tmax_c',
      message: 'Are these temperatures in F? In C no such place is known.',
    });
  });

  test('Celsius given as Fahrenheit', () => {
    const given = { tmax_f: asheville.tmax_c, tmin_f: asheville.tmin_c } as Partial<WrittenPlace>;
    expect(rules(given, ['tmax_c', 'tmin_c'])).toEqual(['place-unit tmax_f']);
  });

  test('the same place given right in Fahrenheit passes', () => {
    expect(
      faults({ tmax_f: inF(asheville.tmax_c), tmin_f: inF(asheville.tmin_c) }, ['tmax_c', 'tmin_c']),
    ).toEqual([]);
  });

  test('the hottest place on record is not asked about', () => {
    // NOAA GHCN-Daily USC00042319, Death Valley, means of 1991-2020, C.
    const deathValley: Partial<WrittenPlace> = {
      lat: 36.4622,
      lon: -116.8669,
      elevation_m: -59.1,
      tmax_c: [19.7, 23.3, 28.3, 32.9, 38.2, 44.0, 47.5, 46.7, 42.1, 34.2, 25.3, 18.8],
      tmin_c: [4.5, 8.0, 12.7, 17.1, 22.6, 27.8, 31.6, 30.4, 24.8, 16.7, 8.9, 3.9],
    };
    expect(faults(deathValley)).toEqual([]);
  });
});

describe('the position', () => {
  test('a longitude east of Greenwich in the United States', () => {
    expect(faults({ lon: 82.61 })).toEqual([
      {
        rule: 'place-position',
        path: 'lon',
        got: 'latitude 35.49, longitude 82.61',
        expected: 'latitude 35.49, longitude -82.61',
        message: 'This position is not in US.',
      },
    ]);
  });

  test('Adelaide without its minus, and with its numbers swapped', () => {
    expect(positionFault('AU', 34.95, 138.52)).toEqual({ better: { lat: -34.95, lon: 138.52 } });
    expect(positionFault('AU', -34.95, 138.52)).toBeNull();
    expect(positionFault('GB', -5.327, 50.218)).toEqual({ better: { lat: 50.218, lon: -5.327 } });
  });

  test('a country that is not in the table is not judged', () => {
    expect(positionFault('LA', 90, 0)).toBeNull();
  });

  test('summers in the wrong half of the year show a wrong sign in any country', () => {
    expect(rules({ country: 'ZZ', lat: -35.49 })).toEqual(['place-position lat']);
    expect(rules({ country: 'ZZ' })).toEqual([]);
  });
});

describe('freeze dates', () => {
  const freeze = (last: { p10: string | null; p50: string | null; p90: string | null }) => ({
    freeze: { '32F': { last }, source: 'NOAA' },
  });

  test("last freezes copied in NOAA's own order are turned round", () => {
    const [fault] = faults(freeze({ p10: '05-24', p50: '05-09', p90: '04-27' }));
    expect(fault).toMatchObject({ rule: 'place-freeze-order', path: 'freeze.32F.last' });
    expect(faults(freeze({ p10: '04-27', p50: '05-09', p90: '05-24' }))).toEqual([]);
  });

  test('dates either side of the new year are in order', () => {
    expect(faults(freeze({ p10: null, p50: '12-24', p90: '01-21' }))).toEqual([]);
  });
});
