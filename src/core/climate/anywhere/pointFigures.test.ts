import { describe, expect, test } from 'vitest';
import { readStations } from '../../../stations/read.ts';
import { stationNetwork } from './network.ts';
import { climateFigures, figuresAt, type PointFigures, type PointRequest } from './pointFigures.ts';

const network = stationNetwork(readStations());

function known(request: PointRequest): PointFigures {
  const answer = figuresAt(network, request);
  if (answer.refused !== undefined) throw new Error(answer.refused);
  return answer;
}

const asheville = { lat: 35.4319, lon: -82.5375, elevationM: 645.3 };

describe('the figures of any point', () => {
  test('at a station are close to its own', () => {
    // NOAA U.S. Climate Normals 1981-2010, USW00003812.
    const { tminC, tmaxC } = known({ ...asheville, period: '1981-2010' });
    expect(tminC[0]).toBeCloseTo(-2.9, 1);
    expect(tmaxC[6]).toBeCloseTo(28.9, 1);
  });

  test('are worked out from the others when the station is left out', () => {
    const { tminC, stations, errors } = known({ ...asheville, leaveOutKm: 5, period: '1981-2010' });
    expect(stations.every(({ km }) => km >= 5)).toBe(true);
    expect(Math.abs((tminC[0] as number) + 2.9)).toBeLessThan(3 * errors.tminC);
    expect(errors.tminC).toBeGreaterThan(0.3);
    expect(errors.tminC).toBeLessThan(2);
  });

  test('cool with height', () => {
    const low = known({ lat: 39.7, lon: -105.2, elevationM: 1700 });
    const high = known({ lat: 39.7, lon: -105.2, elevationM: 2700 });
    expect((low.tmaxC[6] as number) - (high.tmaxC[6] as number)).toBeGreaterThan(4);
  });

  test('are of the recent period unless asked otherwise, which is warmer', () => {
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / 12;
    const recent = known({ ...asheville, leaveOutKm: 5 });
    expect(recent.period).toBe('2003-2021');
    expect(mean(recent.tminC)).toBeGreaterThan(
      mean(known({ ...asheville, leaveOutKm: 5, period: '1981-2010' }).tminC),
    );
  });

  test('are the same whichever way round the date line is written', () => {
    const east = known({ lat: -16.8, lon: 179.99, elevationM: 10 });
    const west = known({ lat: -16.8, lon: -179.99, elevationM: 10 });
    expect(Math.abs((east.tminC[0] as number) - (west.tminC[0] as number))).toBeLessThan(0.3);
  });

  test('have what the model asks for, with a measured spread', () => {
    const figures = climateFigures(known({ lat: 47, lon: 8, elevationM: 450 }));
    for (const values of [figures.sdTminC, figures.sdTmaxC, figures.dewPointC, figures.rainMm]) {
      expect(values).toHaveLength(12);
    }
  });
});

describe('a point nothing can be said of', () => {
  test.each([
    ['at the pole', { lat: 90, lon: 0, elevationM: 0 }, /No station lies within 400 km/],
    ['at sea', { lat: 30, lon: -40, elevationM: 0 }, /No station/],
    ['above every station', { lat: 39.7, lon: -105, elevationM: 9000 }, /too far from the stations around/],
    ['with its height in feet', { lat: 39.7, lon: -105, elevationM: 5280 }, /in feet\? 5,280 ft are 1,609 m/],
    ['off the globe', { lat: 91, lon: 0, elevationM: 0 }, /Latitude 91/],
    ['without a height', { lat: 40, lon: -105, elevationM: Number.NaN }, /not a number of meters/],
    [
      'outside the United States by the older normals',
      { lat: 48, lon: 11, elevationM: 500, period: '1981-2010' as const },
      /United States only/,
    ],
  ])('%s is refused in words', (_, request, words) => {
    expect(figuresAt(network, request).refused).toMatch(words);
  });
});

test('stations south of 60 S are Antarctica, whoever runs them', () => {
  // WMO 89664, McMurdo, is listed under the United States in the monthly reports.
  const south = network.stations.filter(({ lat }) => lat < -60);
  expect(south.length).toBeGreaterThan(5);
  expect(new Set(south.map(({ country }) => country))).toEqual(new Set(['AQ']));
  expect(network.stations.find(({ id }) => id === '72509')?.country).toBe('US');
});
