/** Shares, dates, the buyer's year and what would change a verdict, each on its bound. The bounds are our working figures. */
import { describe, expect, it } from 'vitest';
import type { ClimateAnswer } from '../../src/core/climate/summary.ts';
import { addDays, dayFromParts, dayOfYear } from '../../src/core/days.ts';
import type { RipeningVerdict, WinterVerdict } from '../../src/core/match/answers.ts';
import { buyingSeason } from '../../src/core/match/buyingSeason.ts';
import { ripeningChanges, winterChanges } from '../../src/core/match/change.ts';
import { chillReasons } from '../../src/core/match/chillMet.ts';
import { formAdvice } from '../../src/core/match/forms.ts';
import type { PlaceOutlook } from '../../src/core/match/placeOutlook.ts';
import { count, newTally, spread } from '../../src/core/match/tally.ts';
import type { RipeningClass } from '../../src/core/records/common.ts';
import { fig, figure, placeNamed } from './places.ts';

const johnson = placeNamed('johnson');

describe('shares and dates of a tally', () => {
  const same = (index: number) => index;
  const tallyOf = (...days: number[]) => {
    const tally = newTally();
    for (const day of days) count(tally, day);
    return tally.byDay;
  };

  it('gives the days that 10, 50 and 90 % have reached', () => {
    const ten = Array.from({ length: 10 }, (_, i) => 100 + i);
    expect(spread(tallyOf(...ten), same)).toEqual({ p10: 100, p50: 104, p90: 108 });
    expect(spread(tallyOf(...ten, 110), same)).toEqual({ p10: 101, p50: 105, p90: 109 });
    expect(spread(tallyOf(7), same)).toEqual({ p10: 7, p50: 7, p90: 7 });
    expect(spread(tallyOf(0, 364), same)).toEqual({ p10: 0, p50: 0, p90: 364 });
  });

  it('needs one year of ten, and tells of those alone in which it happens', () => {
    const never = (years: number) => new Array<number>(years).fill(365);
    expect(spread(tallyOf(...never(9), 50), same)).toEqual({ p10: 50, p50: 50, p90: 50 });
    expect(spread(tallyOf(...never(10), 50), same)).toBeNull();
    expect(spread(tallyOf(...never(3)), same)).toBeNull();
    expect(spread(tallyOf(), same)).toBeNull();
  });
});

describe("the buyer's year", () => {
  const answered = (last: [string | null, string | null], first: string | null) =>
    ({
      answer: {
        last: { p10: null, p50: last[0], p90: last[1] },
        first: { p10: null, p50: first, p90: null },
      },
    }) as unknown as ClimateAnswer<never>;
  // Last 32 F on April 10 (day 100) and, late, April 30 (120); last 28 F on March 31 (90); first 32 F on October 27 (300).
  const freeze = {
    ...johnson.freeze,
    '32F': answered(['04-10', '04-30'], '10-27'),
    '28F': answered(['03-31', null], null),
  };
  const on = (doy: number, over: object = {}) =>
    buyingSeason({ lat: 40, freeze: { ...freeze, ...over } }, addDays(dayFromParts(2027, 1, 1), doy - 1));

  it.each([
    [33, 'winter', 1],
    [34, 'planting', 0],
    [89, 'planting', 0],
    [90, 'spring', 309],
    [119, 'spring', 280],
    [120, 'growing', 279],
    [239, 'growing', 160],
    [240, 'late', 159],
    [299, 'late', 100],
    [300, 'winter', 99],
    [365, 'winter', 34],
  ] as const)('is on day %d: %s, %d days to planting', (doy, stage, daysToPlanting) => {
    expect(on(doy)).toEqual({ stage, daysToPlanting, firstFreezeDoy: 300, safeFromDoy: 120 });
  });

  it('takes the last 32 F freeze where there is no night of 28 F', () => {
    expect(on(43, { '28F': answered([null, null], null) }).stage).toBe('winter');
    expect(on(44, { '28F': answered([null, null], null) }).stage).toBe('planting');
  });

  it('where it hardly freezes, is planting time from November to February, May to August south', () => {
    const mild = (lat: number, month: number, date: number) =>
      buyingSeason(
        { lat, freeze: { ...freeze, '32F': answered([null, null], null) } },
        dayFromParts(2027, month, date),
      );
    // Sixty-one days before January 1 is November 1; 120 days from there end with February 28.
    expect(mild(30, 10, 31)).toMatchObject({ stage: 'growing', daysToPlanting: 1 });
    expect(mild(30, 11, 1)).toMatchObject({ stage: 'planting', daysToPlanting: 0 });
    expect(mild(30, 2, 28)).toMatchObject({ stage: 'planting', daysToPlanting: 0 });
    expect(mild(30, 3, 1)).toMatchObject({ stage: 'growing', daysToPlanting: 245, safeFromDoy: null });
    expect(mild(-30, 4, 30).stage).toBe('growing');
    expect(mild(-30, 5, 1).stage).toBe('planting');
    expect(mild(-30, 8, 28).stage).toBe('planting');
    expect(mild(-30, 8, 29).stage).toBe('growing');
  });

  it('keeps bare roots as long as their record says, and tells the weeks', () => {
    const bareRoot = (doy: number, keeps = 52) =>
      formAdvice(
        { ...johnson, freeze },
        { ...fig, bareRootKeepsDays: figure(keeps) },
        { asOf: addDays(dayFromParts(2027, 1, 1), doy - 1) },
      ).find(({ form }) => form === 'bare-root')!;
    expect(bareRoot(347)).toMatchObject({ fit: 'fine' });
    expect(bareRoot(346)).toMatchObject({ fit: 'poor' });
    expect(bareRoot(347).because[0]!.text).toMatch(/about 8 weeks off, and bare roots keep 52 days/);
    expect(bareRoot(27).because[0]!.text).toMatch(/about 1 week off/);
    expect(bareRoot(26).because[0]!.text).toMatch(/about 2 weeks off/);
    expect(dayOfYear(dayFromParts(2027, 12, 13))).toBe(347);
  });
});

describe('what would change it', () => {
  const winter = (care: WinterVerdict['care'], marginC: number, firstMarginC = marginC) =>
    winterChanges({
      established: { care, marginC },
      'first-winter': { marginC: firstMarginC },
      'second-winter': { marginC },
    } as never).map(({ text }) => text);

  it('says how much is short, and a warm wall where it makes up for all of it', () => {
    expect(winter('wrap', -3)).toEqual([
      expect.stringMatching(/5 F \(3 C\) short\. A warm wall, worth up to 5 F \(3 C\)/),
    ]);
    expect(winter('wrap', -3.1)).toEqual([expect.stringMatching(/short\.$/)]);
    expect(winter('bury', -7.3)[0]).toContain('(7.5 C) short');
    expect(winter('store', -15)[0]).toContain('(15 C) short');
    expect(winter('mulch', 1, 0)).toEqual([]);
    expect(winter('nothing', 5, -0.1)[0]).toMatch(/first winters spent in a pot/);
  });

  it('names the latest of the earlier classes that is reliable', () => {
    const odds = { sharpShare: 0, dates: null };
    const outlook = johnson.species.get('fig')!;
    const place = (shares: Record<string, number>): PlaceOutlook => {
      const main = new Map(
        Object.entries(shares).map(([name, share]) => {
          const outdoors = { ...odds, share };
          return [name as RipeningClass, { outdoors, headStart: outdoors, window: johnson.usualWindow }];
        }),
      );
      return { ...johnson, species: new Map([['fig', { ...outlook, crops: { ...outlook.crops, main } }]]) };
    };
    const verdict = {
      crop: 'main',
      word: 'some-years',
      headStart: { word: 'most-years', share: 0.6 },
    } as RipeningVerdict;
    const said = (shares: Record<string, number>, over: object = {}) =>
      ripeningChanges(place(shares), fig, 'late', { ...verdict, ...over } as RipeningVerdict).map(
        ({ text }) => text,
      );
    expect(said({ 'very-early': 1, early: 0.8, mid: 0.79, late: 0.9, 'very-late': 1 })[1]).toBe(
      'A cultivar of the class "early" ripens reliably here.',
    );
    expect(said({ mid: 0.9, early: 1 })[1]).toContain('"mid-season"');
    expect(said({ early: 0.7, late: 1 })).toHaveLength(1);
    expect(said({}, { headStart: { word: 'some-years', share: 0.3 } })).toEqual([]);
    expect(said({ early: 1 }, { word: 'reliable' })).toEqual([]);
    expect(said({})[0]).toContain('6 years in 10');
  });
});

it('says the chill of a place by the unit of the need', () => {
  const chill = {
    answer: { portions: { p10: 20, p50: 30, p90: 40 }, hours: { p10: 200.4, p50: 400, p90: 599.6 } },
  } as never;
  const said = (species: typeof fig) => chillReasons(species, 'met', chill).map(({ text }) => text);
  expect(said(fig).slice(1)).toEqual([
    'It needs about 10 chill portions.',
    expect.stringMatching(/more than 20 here\D+ more than 40\./),
  ]);
  expect(said({ ...fig, chillPortions: null }).slice(1)).toEqual([
    'It needs about 200 hours of chill.',
    expect.stringMatching(/more than 200 here\D+ more than 600\./),
  ]);
});
