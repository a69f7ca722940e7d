/** Whether crops ripen, and when. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nothingPublished } from '../../src/core/climate/figures.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { ripeningVerdict } from '../../src/core/match/ripening.ts';
import { NEED_FIFTHS, ripeningOdds } from '../../src/core/match/ripeningOdds.ts';
import { ripeningWord, yearsOfTen } from '../../src/core/match/words.ts';
import { killingFreezeAt } from '../../src/core/phenology/endOfSeason.ts';
import { context, cultivar, fig, outlookOf, placeNamed, southOf } from './places.ts';

// Abramowitz and Stegun 1964, Handbook of Mathematical Functions, table 26.5: the normal deviate of 0.1 is 1.28155, of 0.3 0.52440.
it('takes trees from the middle of each fifth of a normal distribution', () => {
  const expected = [-1.28155, -0.5244, 0, 0.5244, 1.28155];
  expect(NEED_FIFTHS).toHaveLength(expected.length);
  NEED_FIFTHS.forEach((fifth, i) => {
    expect(fifth).toBeCloseTo(expected[i]!, 3);
  });
});

describe('odds of ripening', () => {
  const figures = fc.record({
    lat: fc.integer({ min: -55, max: 55 }),
    mean: fc.double({ min: -2, max: 26, noNaN: true }),
    swing: fc.double({ min: 0, max: 18, noNaN: true }),
    range: fc.double({ min: 3, max: 18, noNaN: true }),
  });

  it('are never better for a larger need, never later for a smaller one, never worse with a head start, never NaN', () => {
    fc.assert(
      fc.property(figures, fc.integer({ min: 300, max: 3000 }), ({ lat, mean, swing, range }, need) => {
        const sign = lat < 0 ? -1 : 1;
        const daily = Array.from(
          { length: 12 },
          (_, m) => mean - sign * swing * Math.cos((2 * Math.PI * m) / 12),
        );
        const years = weatherYears(
          {
            lat,
            tminC: daily.map(t => t - range / 2),
            tmaxC: daily.map(t => t + range / 2),
            sdTminC: null,
            sdTmaxC: null,
            sdAbout: 'month',
            lag1: null,
            rainMm: null,
            dewPointC: null,
            published: nothingPublished,
          },
          20,
        );
        const rules = { heatFrom: 0, budbreakHeat: 200, leafDamageC: -1.1, end: killingFreezeAt(-2.2) };
        const headStart = { moveOut: 120, credit: 280 };
        const [odds] = ripeningOdds(years, 8, 36, [
          {
            rules,
            needs: [need, need * 1.1].map(heat => ({
              by: 'heat' as const,
              heat,
              budbreakHeat: 200,
              leastDays: 0,
            })),
            headStart,
          },
        ]);
        const [easy, hard] = odds!.outdoors;
        const [easyHelped] = odds!.headStart;
        expect(easy!.share).toBeGreaterThanOrEqual(hard!.share);
        expect(easy!.sharpShare).toBeGreaterThanOrEqual(hard!.sharpShare);
        expect(easyHelped!.share).toBeGreaterThanOrEqual(easy!.share);
        expect(easyHelped!.sharpShare).toBeGreaterThanOrEqual(easy!.sharpShare);
        for (const { share, sharpShare } of [easy!, hard!, easyHelped!]) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
          expect(sharpShare).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('cannot be told from a single weather year', () => {
    const years = weatherYears(evidenceFigures('bonn'), 1);
    expect(() => ripeningOdds(years, 8, 36, [])).toThrow(RangeError);
  });
});

describe('verdicts', () => {
  const at = (place: Parameters<typeof placeNamed>[0], over = {}, crop: 'main' | 'breba' = 'main') =>
    ripeningVerdict(placeNamed(place), fig, cultivar(over), crop, context);

  it('an earlier class never ripens later, nor less often', () => {
    const classes = ['very-early', 'early', 'mid', 'late'] as const;
    for (const place of ['johnson', 'bonn', 'davis', 'beijing', 'sfax'] as const) {
      const verdicts = classes.map(ripening => at(place, { ripening }));
      verdicts.slice(1).forEach((later, i) => {
        const earlier = verdicts[i]!;
        expect(earlier.share).toBeGreaterThanOrEqual(later.share);
        if (later.dates) expect(earlier.dates!.p50).toBeLessThanOrEqual(later.dates.p50);
      });
    }
  });

  it('promise no crop that wants a wasp, unless there are wasps', () => {
    const smyrna = at('davis', { pollination: 'wasp-all' });
    expect(smyrna).toMatchObject({ blocked: 'needs-wasp', share: 0, word: 'not-outdoors' });
    expect(smyrna.because[0]!.text).toContain('wasp');
    expect(at('davis', { pollination: 'wasp-main' }, 'breba').blocked).toBeNull();
    const withWasps = ripeningVerdict(
      placeNamed('davis'),
      fig,
      cultivar({ pollination: 'wasp-all' }),
      'main',
      { ...context, waspsNear: true },
    );
    expect(withWasps).toMatchObject({ blocked: null, word: 'reliable' });
  });

  it('say so when the species gives no need for the class', () => {
    expect(at('davis', { ripening: 'very-late' })).toMatchObject({ blocked: 'no-figure', share: 0 });
  });

  it('count the winters that kill the wood of the breba crop', () => {
    const kansas = at('johnson', {}, 'breba');
    expect(kansas.share).toBeLessThan(0.05);
    expect(kansas.headStart.share).toBeGreaterThan(0.95);
    expect(at('davis', {}, 'breba').share).toBeGreaterThan(0.95);
  });

  it('come half a year later south of the equator', () => {
    const north = at('davis').dates!;
    const place = outlookOf('davis south', southOf(evidenceFigures('davis')));
    const south = ripeningVerdict(place, fig, cultivar(), 'main', context).dates!;
    const gap = (((south.p50 - north.p50) % 365) + 365) % 365;
    expect(Math.abs(gap - 182)).toBeLessThanOrEqual(5);
  });
});

it('words for shares of years', () => {
  expect([0.8, 0.79, 0.5, 0.49, 0.2, 0.19].map(ripeningWord)).toEqual([
    'reliable',
    'most-years',
    'most-years',
    'some-years',
    'some-years',
    'not-outdoors',
  ]);
  expect([0, 0.06, 0.1, 0.44, 0.949, 1].map(yearsOfTen)).toEqual([
    'in hardly any year',
    'in 1 year in 10',
    'in 1 year in 10',
    'in 4 years in 10',
    'in 9 years in 10',
    'in nearly every year',
  ]);
});
