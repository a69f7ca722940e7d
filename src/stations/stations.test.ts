/** The tables of stations against figures typed from the publishers' own files, and the factors against what the model gives today. */

import { describe, expect, test } from 'vitest';
import { stationNetwork } from '../core/climate/anywhere/network.ts';
import { factorsOfStation } from '../core/climate/anywhere/stationFactors.ts';
import { normalsStations, withSeasonFactors } from '../core/climate/anywhere/stationTable.ts';
import { doyFromMonthDay } from '../core/days.ts';
import { fahrenheitToCelsius, inchesToMm } from '../core/units.ts';
import { readStations, readTables } from './read.ts';

const stations = readStations();
const station = (id: string) => stations.find(each => each.id === id);

describe('the tables', () => {
  test('have every station of their README, each with twelve months that do not cross', () => {
    expect(stations.filter(({ period }) => period === '1981-2010')).toHaveLength(6507);
    expect(stations.filter(({ period }) => period === '2003-2021')).toHaveLength(2280);
    for (const { id, tminC, tmaxC } of stations) {
      expect(tminC, id).toHaveLength(12);
      for (let month = 0; month < 12; month += 1) {
        expect(tmaxC[month], `${id} month ${month + 1}`).toBeGreaterThanOrEqual(tminC[month] as number);
      }
    }
    expect(new Set(stations.map(({ id }) => id)).size).toBe(stations.length);
  });

  test('Richmond as in the monthly station file USW00013740, U.S. Climate Normals 1981-2010 (474 is 47.4 F, 304 is 3.04 in)', () => {
    const richmond = station('USW00013740');
    expect(richmond?.tmaxC[0]).toBeCloseTo(fahrenheitToCelsius(47.4), 1);
    expect(richmond?.tminC[0]).toBeCloseTo(fahrenheitToCelsius(28.3), 1);
    expect(richmond?.tmaxC[6]).toBeCloseTo(fahrenheitToCelsius(89.7), 1);
    expect(Math.abs((richmond?.rainMm?.[0] as number) - inchesToMm(3.04))).toBeLessThan(0.6);
  });

  test('Lebanon freezes as in the annual station file USW00094765, U.S. Climate Normals 1981-2010', () => {
    // ANN-TMIN-PRBLST-T32FP50 and -PRBFST-T32FP50; NOAA's P90 of the last freeze is the early date.
    expect(station('USW00094765')?.official).toEqual({
      last: { p10: doyFromMonthDay('04-26'), p50: doyFromMonthDay('05-09') },
      first: { p50: doyFromMonthDay('10-05'), p90: doyFromMonthDay('10-15') },
    });
  });

  test('Asheville airport with its coldest nights from the reports', () => {
    expect(station('72315')).toMatchObject({ coldestNightC: -12.5, winters: 17, country: 'US' });
  });
});

describe('season factors', () => {
  test('are those of the model as it is', () => {
    // After a change of the weather model: npm run station-factors.
    const network = stationNetwork(readTables());
    for (const id of ['USW00013740', 'USW00094765', '72315', '03772', '10865']) {
      const kept = station(id)?.factors ?? null;
      const bare = network.stations.find(each => each.id === id);
      if (!bare) continue;
      const today = factorsOfStation(network, bare);
      for (const season of ['spring', 'fall', 'winter'] as const) {
        const [a, b] = [kept?.[season] ?? null, today?.[season] ?? null];
        expect(a === null, `${id} ${season}`).toBe(b === null);
        if (a !== null && b !== null) expect(Math.abs(a - b), `${id} ${season}`).toBeLessThan(0.006);
      }
    }
  });

  test('of another set of stations are refused', () => {
    expect(() => withSeasonFactors([], { model: 1, spring: [1], fall: [1], winter: [1] })).toThrow(
      /npm run station-factors/,
    );
  });
});

test('a table cut short is refused, not read wrongly', () => {
  const table = {
    id: 'A\nB',
    name: 'a\nb',
    lat: [1],
    lon: [1, 2],
    elevation: [1, 2],
    tmin: [],
    range: [],
    rain: [],
  };
  const rest = { region: '', last50: [], last10: [], first50: [], first90: [], gdd50f: [] };
  expect(() => normalsStations({ ...table, ...rest })).toThrow(/lat has 1 stations, id has 2/);
});
