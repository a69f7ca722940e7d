import { describe, expect, it } from 'vitest';
import { absurdMonths } from './absurdMonths.ts';
import type { Station } from './station.ts';

/** A year of a mild temperate place, C; the numbers themselves do not matter. */
const year = [-3, -2, 2, 7, 12, 16, 19, 18, 14, 8, 3, -1];

function station(id: string, lat: number, cooler: number): Station {
  return {
    ...{
      id,
      name: id,
      region: '',
      country: 'US',
      lat,
      lon: -80,
      elevationM: 300,
      period: '1981-2010' as const,
    },
    ...{ tminC: year.map(value => value - cooler), tmaxC: year.map(value => value + 11 - cooler) },
    ...{ rainMm: null, sdMeanC: null, vaporHpa: null, official: null, gdd50F: null },
    ...{ coldestNightC: null, winters: 0, years: 30, factors: null },
  };
}
const stations = [0, 1, 2, 3, 4, 5].map(i => station(`s${i}`, 36 + i / 10, i));

describe('months of a station', () => {
  it('are believed where neighbors are cooler or warmer all through the year', () => {
    expect(absurdMonths(stations)).toEqual([]);
    expect(absurdMonths([...stations, station('high', 36.25, 14)])).toEqual([]);
  });

  it('are found by the neighbors where one has lost its sign, and said with what is likely', () => {
    const wrong = {
      ...stations[2]!,
      tminC: stations[2]!.tminC.map((value, month) => (month === 6 ? -value : value)),
    };
    const found = absurdMonths(stations.map((each, i) => (i === 2 ? wrong : each)));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ id: 's2', month: 6, what: 'minimum', givenC: -17 });
    expect(found[0]?.likelyC).toBeCloseTo(17, 0);
  });

  it('are believed where no neighbors are near', () => {
    const lonely = {
      ...station('island', -50, 0),
      tminC: year.map((value, month) => (month === 3 ? 40 : value)),
    };
    expect(absurdMonths([...stations, lonely])).toEqual([]);
  });
});
