/** Which reference place is most like another climate, and how the two differ in words. The measures are our working figures. */
import { describe, expect, it } from 'vitest';
import { type ComparedClimate, comparedClimate } from '../../src/core/match/comparedClimate.ts';
import { differences, nearestClimate } from '../../src/core/match/nearestClimate.ts';
import { placeNamed } from './places.ts';

const own: ComparedClimate = {
  lastDoy: 100,
  firstDoy: 300,
  coldestC: -10,
  heat: 1000,
  deficitKpa: 1,
  south: false,
};

/** Whether the first of two places, each unlike `own` in what is given, is the nearer one. */
function isNearer(one: Partial<ComparedClimate>, other: Partial<ComparedClimate>, of = own): boolean {
  const places = [
    { id: 'other', climate: { ...of, ...other } },
    { id: 'one', climate: { ...of, ...one } },
  ];
  return nearestClimate(of, places)?.id === 'one';
}

describe('the nearest climate', () => {
  // A difference a grower would notice, ours: five days of the last freeze, ten of the first, half a zone, a tenth of the heat, a kilopascal.
  it.each<[string, (size: number) => Partial<ComparedClimate>]>([
    ['five days of the last freeze', size => ({ lastDoy: 100 + 5 * size })],
    ['ten days of the first freeze', size => ({ firstDoy: 300 - 10 * size })],
    ['2.8 C of the coldest night', size => ({ coldestC: -10 - 2.8 * size })],
    // Heat counts from 100 degree-days below nothing, so that cold places can be told apart: 1,100 is a tenth more than 1,000.
    ['a tenth of the heat, more', size => ({ heat: 1100 * 1.1 ** size - 100 })],
    ['a tenth of the heat, less', size => ({ heat: 1100 / 1.1 ** size - 100 })],
    ['a kilopascal', size => ({ deficitKpa: 1 + size })],
  ])('weighs %s like any other such difference', (_, apart) => {
    for (const size of [1, 2, 3]) {
      expect(isNearer(apart(size - 0.01), { coldestC: -10 + 2.8 * size })).toBe(true);
      expect(isNearer(apart(size + 0.01), { coldestC: -10 + 2.8 * size })).toBe(false);
    }
  });

  it('adds differences of several kinds as the sides of a right angle', () => {
    const both = { lastDoy: 115, firstDoy: 340 };
    expect(isNearer(both, { coldestC: -10 + 2.8 * 5.01 })).toBe(true);
    expect(isNearer(both, { coldestC: -10 + 2.8 * 4.99 })).toBe(false);
  });

  it('takes a last freeze that only one has for 20 days, and none that both have not for nothing', () => {
    expect(isNearer({ lastDoy: null }, { lastDoy: 121 })).toBe(true);
    expect(isNearer({ lastDoy: null }, { lastDoy: 119 })).toBe(false);
    const freezeless = { ...own, lastDoy: null, firstDoy: null };
    expect(isNearer({}, { coldestC: -10.1 }, freezeless)).toBe(true);
    expect(isNearer({ lastDoy: 100 }, { coldestC: -10 + 2.8 * 3.99 }, freezeless)).toBe(false);
    expect(isNearer({ lastDoy: 100 }, { coldestC: -10 + 2.8 * 4.01 }, freezeless)).toBe(true);
  });

  it('counts days across the new year, and never takes the other half of the world before its own', () => {
    const lateDecember = { ...own, lastDoy: 360 };
    expect(isNearer({ lastDoy: 5 }, { lastDoy: 349 }, lateDecember)).toBe(true);
    expect(isNearer({ lastDoy: 7 }, { lastDoy: 350 }, lateDecember)).toBe(false);
    expect(isNearer({ south: true }, { coldestC: -100, heat: 4000 })).toBe(false);
    const southern = { ...own, south: true };
    expect(isNearer({ south: false }, { coldestC: -100, heat: 4000 }, southern)).toBe(false);
  });

  it('is the first of two alike, and none where there are no places', () => {
    const places = ['a', 'b'].map(id => ({ id, climate: own }));
    expect(nearestClimate(own, places)?.id).toBe('a');
    expect(nearestClimate(own, [])).toBeNull();
  });

  it('takes what it compares from the climate itself', () => {
    const { lat, freeze } = placeNamed('johnson');
    const figures = {
      lat: -lat,
      tminC: new Array<number>(12).fill(10),
      tmaxC: new Array<number>(12).fill(20),
      dewPointC: null,
      rainMm: null,
    } as never;
    const answer = (first: string | null, last: string | null) =>
      ({ answer: { first: { p50: first }, last: { p50: last } } }) as never;
    const annualMinC = { answer: { mean: -3, p10: -7 } } as never;
    const compared = comparedClimate(figures, {
      freeze: { ...freeze, '32F': answer('10-27', '04-10') },
      annualMinC,
    });
    // Fifteen degrees on average are five above 10 C on each of 365 days.
    expect(compared).toMatchObject({
      lastDoy: 100,
      firstDoy: 300,
      coldestC: -3,
      heat: expect.closeTo(1825, 6),
      south: true,
    });
    const freezeless = comparedClimate(figures, {
      freeze: { ...freeze, '32F': answer(null, null) },
      annualMinC,
    });
    expect(freezeless).toMatchObject({ lastDoy: null, firstDoy: null });
    expect(comparedClimate({ ...(figures as object), lat: 0 } as never, { freeze, annualMinC }).south).toBe(
      false,
    );
  });
});

describe('differences in words', () => {
  const told = (mine: Partial<ComparedClimate>, its: Partial<ComparedClimate> = {}) =>
    differences({ ...own, ...mine }, { ...own, ...its });

  it('are told from three days on, by how much and which way', () => {
    expect(told({})).toEqual([]);
    expect(told({ lastDoy: 102 })).toEqual([]);
    expect(told({ lastDoy: 103 })).toEqual(['your last freeze is about 3 days later']);
    expect(told({ firstDoy: 297 })).toEqual(['your first freeze is about 3 days earlier']);
    expect(told({ lastDoy: 5 }, { lastDoy: 360 })).toEqual(['your last freeze is about 10 days later']);
    expect(told({ lastDoy: 360 }, { lastDoy: 5 })).toEqual(['your last freeze is about 10 days earlier']);
    // Half a year apart is 182 days whichever way; a day more is nearer the other way round.
    expect(told({ lastDoy: 282 })).toEqual(['your last freeze is about 182 days later']);
    expect(told({ lastDoy: 283 })).toEqual(['your last freeze is about 182 days earlier']);
  });

  it('say where a freeze comes in few years, and nothing where only the place has none', () => {
    expect(told({ firstDoy: null })).toEqual(['your first freeze comes in few years only']);
    expect(told({}, { firstDoy: null })).toEqual([]);
    expect(told({ firstDoy: null }, { firstDoy: null })).toEqual([]);
  });

  // A half zone is 5 F, 2.78 C (USDA Plant Hardiness Zone Map).
  it.each([
    [1.38, []],
    [1.39, ['your winters are half a zone milder']],
    [-1.39, ['your winters are half a zone colder']],
    [4.16, ['your winters are half a zone milder']],
    [4.18, ['your winters are a zone milder']],
    [-6.94, ['your winters are a zone colder']],
    [6.95, ['your winters are 1.5 zones milder']],
    [11.11, ['your winters are 2 zones milder']],
  ])('of %f C on the coldest night are half zones', (warmerC, words) => {
    expect(told({ coldestC: -10 + warmerC })).toEqual(words);
  });

  it('tell heat from a twentieth on', () => {
    const heat = (mine: number) => told({ heat: mine }, { heat: 999 });
    expect(heat(1048)).toEqual([]);
    expect(heat(1050)).toEqual(['your year has about 5 % more heat']);
    expect(heat(950)).toEqual([]);
    expect(heat(948)).toEqual(['your year has about 5 % less heat']);
    expect(heat(1999)).toEqual(['your year has about 100 % more heat']);
    expect(told({ heat: 0 }, { heat: 0 })).toEqual([]);
  });
});
