/** Edges of the rules of matching: what happens on a bound, and what a small difference decides. The bounds are our working figures. */
import { expect, it } from 'vitest';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { climateTraits, summerLikeness, winterLikeness } from '../../src/core/match/likeness.ts';
import { matchAll } from '../../src/core/match/match.ts';
import { cropChance, ranked } from '../../src/core/match/ranking.ts';
import { ripeningVerdict } from '../../src/core/match/ripening.ts';
import { tripsOfTen } from '../../src/core/match/travel.ts';
import { context, cultivar, fig, matchPlace, placeNamed } from './places.ts';

const traits = { winterLowC: -10, heat: 1500, deficitKpa: 1 };

it('tells likeness by a bell curve: 0.61 at one width, 0.14 at two', () => {
  const at = (widths: number) => winterLikeness(traits, { ...traits, winterLowC: -10 + 3 * widths });
  expect([0, 1, 2].map(at).map(likeness => likeness.toFixed(3))).toEqual(['1.000', '0.607', '0.135']);
  expect(summerLikeness(traits, { ...traits, heat: 1500 * 1.12 })).toBeCloseTo(Math.exp(-0.5), 9);
  expect(summerLikeness(traits, { ...traits, deficitKpa: 1.5 })).toBeCloseTo(Math.exp(-0.5), 9);
});

it('finds summers without heat alike, and unlike any other', () => {
  const none = { ...traits, heat: 0 };
  expect(summerLikeness(none, none)).toBe(1);
  expect(summerLikeness(none, traits)).toBe(0);
  expect(summerLikeness(traits, none)).toBe(0);
});

it('counts heat above 10 C of the monthly means, and none of months that are colder', () => {
  const figures = {
    ...evidenceFigures('bonn'),
    tminC: Array<number>(12).fill(0),
    tmaxC: Array<number>(12).fill(10),
  };
  expect(climateTraits(figures, -5).heat).toBe(0);
  expect(climateTraits({ ...figures, tmaxC: Array<number>(12).fill(22) }, -5).heat).toBeCloseTo(365, 9);
});

it.each([
  [0.951, 'nearly all trips'],
  [0.95, '10 trips in 10'],
  [0.05, '1 trip in 10'],
  [0.049, 'hardly any trip'],
])('a share of trips of %f is %s', (share, words) => {
  expect(tripsOfTen(share)).toBe(words);
});

it('puts the better head start first among crops alike outdoors', () => {
  const match = matchPlace(placeNamed('bonn'), cultivar(), fig, context);
  const [crop] = match.ripening;
  const withHeadStart = (id: string, share: number) => ({
    ...match,
    cultivar: id,
    ripening: [{ ...crop!, headStart: { ...crop!.headStart, share } }],
  });
  const inOrder = ranked([withHeadStart('a', 0.4), withHeadStart('b', 0.6)], ({ level, ripening }) => ({
    level,
    chance: cropChance({ ripening }),
  }));
  expect(inOrder.map(one => one.cultivar)).toEqual(['b', 'a']);
});

it('lets hardier wood and a warmer spot carry more brebas, and neither more of a main crop', () => {
  const place = placeNamed('bonn');
  const share = (crop: 'breba' | 'main', hardinessOffsetC: number, shelterC: number) =>
    ripeningVerdict(place, fig, cultivar({ crops: ['breba', 'main'], hardinessOffsetC }), crop, {
      ...context,
      shelterC,
    }).share;
  expect(share('breba', -2, 0)).toBeGreaterThan(share('breba', 0, 0));
  expect(share('breba', 0, 2)).toBeGreaterThan(share('breba', 0, 0));
  expect(share('breba', 0, -2)).toBeLessThan(share('breba', 0, 0));
  expect(share('main', -2, 2)).toBe(share('main', 0, 0));
  // Judged together, as on a page: what one keeps for the next is kept by hardiness.
  const both = [0, -2].map(offsetC => cultivar({ crops: ['breba', 'main'], hardinessOffsetC: offsetC }));
  const brebas = matchAll(place, both, [fig], context).map(
    ({ ripening }) => ripening.find(({ crop }) => crop === 'breba')!.share,
  );
  expect(brebas).toEqual([share('breba', 0, 0), share('breba', -2, 0)]);
});
