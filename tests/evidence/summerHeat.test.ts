/** Heat of summers against published bounds, and against worked sums. */

import { describe, expect, it } from 'vitest';
import {
  huglinIndexC,
  summerBounds,
  summerByHuglin,
  summerClass,
  summerClasses,
  winklerDegreeDaysC,
} from '../../src/core/climate/placeClass.ts';
import { degreesCToF } from '../../src/core/units.ts';

describe('Winkler degree days', () => {
  it.each([
    // Jones, Duff, Hall and Myers 2010, American Journal of Enology and Viticulture 61(3):313-326, the bounds of their regions in C and F.
    [850, 1500, 'cool', 'cool'],
    [1111, 2000, 'cool', 'moderate'],
    [1389, 2500, 'moderate', 'moderate'],
    [1667, 3000, 'moderate', 'warm'],
    [1944, 3500, 'warm', 'warm'],
    [2222, 4000, 'warm', 'hot'],
    [2700, 4900, 'hot', 'very-hot'],
  ] as const)('%i C (%i F) lies between %s and %s', (inC, inF, below, above) => {
    expect(Math.abs(degreesCToF(inC) - inF)).toBeLessThan(50);
    expect(summerClass(inC - 1)).toBe(below);
    expect(summerClass(inC)).toBe(above);
  });

  it('has bounds that meet', () => {
    for (const [at, name] of summerClasses.entries()) {
      const { from, to } = summerBounds(name);
      expect(summerClass(from ?? 0)).toBe(name);
      if (to !== null) expect(summerClass(to)).toBe(summerClasses[at + 1]);
    }
  });

  it('adds up seven months in the north and in the south', () => {
    // A place at 15 C all year has 5 degrees over 10 C on each of the 214 days from April to October, and 212 from October to April.
    const even = { tminC: new Array<number>(12).fill(10), tmaxC: new Array<number>(12).fill(20) };
    expect(winklerDegreeDaysC({ ...even, lat: 45 })).toBeCloseTo(5 * 214);
    expect(winklerDegreeDaysC({ ...even, lat: -45 })).toBeCloseTo(5 * 212);
    // A month below 10 C takes nothing away.
    const cold = even.tminC.map((low, month) => (month === 5 ? -20 : low));
    expect(winklerDegreeDaysC({ ...even, tminC: cold, lat: 45 })).toBeCloseTo(5 * (214 - 30));
  });
});

describe('the Huglin index', () => {
  it('counts highs as much as means, six months, and longer days a little more', () => {
    // Mean 15, high 20: (5 + 10) / 2 on each of the 183 days from April to September, 182 from October to March.
    const even = { tminC: new Array<number>(12).fill(10), tmaxC: new Array<number>(12).fill(20) };
    expect(huglinIndexC({ ...even, lat: 35 })).toBeCloseTo(7.5 * 183);
    expect(huglinIndexC({ ...even, lat: -35 })).toBeCloseTo(7.5 * 182);
    // Day length factor, Huglin 1978, from memory: 1.02 at 40 to 42 degrees, 1.06 at 48 to 50.
    for (const [lat, factor] of [
      [41, 1.02],
      [43, 1.03],
      [45, 1.04],
      [47, 1.05],
      [49, 1.06],
      [55, 1.06],
    ] as const) {
      expect(huglinIndexC({ ...even, lat }) / (7.5 * 183)).toBeCloseTo(factor);
    }
  });

  it.each([
    // Bounds of Tonietto and Carbonneau 2004, from memory.
    [1500, 'cool'],
    [1799, 'cool'],
    [1800, 'moderate'],
    [2100, 'warm'],
    [2400, 'hot'],
    [3000, 'very-hot'],
  ] as const)('%i is %s', (index, name) => {
    expect(summerByHuglin(index)).toBe(name);
  });

  it('tells a cool coast from a warm inland of as many degree days', () => {
    // Monthly normals of San Francisco airport and Boston, rounded: NOAA 1991-2020, from memory. Alike by Winkler, two classes apart by afternoons.
    const coast = {
      lat: 37.6,
      tminC: [7.4, 8.2, 8.9, 9.7, 11.2, 12.4, 13.3, 13.9, 13.6, 12.3, 9.7, 7.5],
      tmaxC: [14.0, 15.8, 17.0, 18.2, 19.3, 21.2, 21.9, 22.3, 23.3, 21.9, 17.6, 14.1],
    };
    expect(summerClass(winklerDegreeDaysC(coast))).toBe('moderate');
    expect(summerByHuglin(huglinIndexC(coast))).toBe('cool');
  });
});
