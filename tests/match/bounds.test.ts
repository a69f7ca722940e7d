/** The rules for winter, pots, wet and the level, on their very bounds and a hair beside them. The bounds are our working figures. */
import { describe, expect, it } from 'vitest';
import { levelOf } from '../../src/core/match/level.ts';
import type { PlaceOutlook } from '../../src/core/match/placeOutlook.ts';
import { potVerdict } from '../../src/core/match/pot.ts';
import { ripeningWindow } from '../../src/core/match/ripeningWindow.ts';
import { wetTolerance, wetVerdict } from '../../src/core/match/wet.ts';
import { winterVerdict, woodLimit } from '../../src/core/match/winter.ts';
import { cultivar, fig, figure, placeNamed } from './places.ts';

const johnson = placeNamed('johnson');
const hair = 1e-9;

describe('the level on its bounds', () => {
  const parts = {
    care: 'mulch',
    outdoors: 0.8,
    headStart: 0,
    wet: 'some-loss',
    chill: 'met',
    fruitless: false,
  } as const;

  it.each([
    [{}, 'at-home'],
    [{ outdoors: 0.8 - hair }, 'with-care'],
    [{ wet: 'heavy-loss' }, 'with-care'],
    [{ chill: 'doubtful' }, 'with-care'],
    [{ care: 'wrap' }, 'with-care'],
    [{ care: 'wrap', outdoors: 0.5 }, 'with-care'],
    [{ care: 'wrap', outdoors: 0.5 - hair }, 'a-gamble'],
    [{ care: 'bury' }, 'in-a-pot'],
    [{ care: 'store', outdoors: 0, headStart: 0.5 }, 'in-a-pot'],
    [{ care: 'store', outdoors: 0, headStart: 0.5 - hair }, 'a-gamble'],
    [{ chill: 'short' }, 'a-gamble'],
    [{ outdoors: 0.2 }, 'a-gamble'],
    [{ outdoors: 0.2 - hair }, 'not-here'],
  ] as const)('%o is %s', (over, level) => {
    expect(levelOf({ ...parts, ...over })).toBe(level);
  });
});

describe('wood', () => {
  it('stands in its first and second winter what its record says, and 3 C less than old wood', () => {
    const tender = { ...fig, dormantEstablishedC: figure(-10), dormantFirstWinterC: figure(-5) };
    const limits = (species: typeof fig, offsetC = 0) =>
      (['first-winter', 'second-winter', 'established'] as const).map(
        age => woodLimit(species, age, offsetC).limitC,
      );
    expect(limits(tender)).toEqual([-5, -7, -10]);
    expect(limits(tender, 2)).toEqual([-3, -5, -8]);
    // Where young wood lacks less than 3 C, the second winter lacks no more than the first.
    expect(limits({ ...tender, dormantFirstWinterC: figure(-8) })).toEqual([-8, -8, -10]);
  });

  it('says the offset of a cultivar by its size and its sign, and none where there is none', () => {
    const offset = (byC: number) => woodLimit(fig, 'established', byC).because[1]?.text;
    expect(offset(-2)).toBe('The grower rates it 4 F (2 C) hardier than its species.');
    expect(offset(1)).toEqual(expect.stringMatching(/2 F \(1 C\) /));
    expect(offset(0)).toBeUndefined();
  });

  it('has its margin from the low of one winter in ten, the shelter added', () => {
    const at = (shelterC: number) =>
      winterVerdict({ ...johnson, designLowC: -20 }, fig, 'established', 0, { shelterC });
    expect(at(0)).toMatchObject({ designLowC: -20, marginC: expect.closeTo(-9.7, 9), care: 'bury' });
    expect(at(2)).toMatchObject({ designLowC: -18, marginC: expect.closeTo(-7.7, 9) });
    const said = (shelterC: number) => at(shelterC).because[1]!.text;
    expect(said(2)).toBe('The spot is taken as 4 F (2 C) warmer than the station on cold nights.');
    expect(said(-2)).toBe('The spot is taken as 4 F (2 C) colder than the station on cold nights.');
  });
});

describe('a pot', () => {
  const pots = [
    { container: '#1', liters: 3, lowC: -9, insulatedLowC: -7 },
    { container: '#3', liters: 11, lowC: -4, insulatedLowC: -3 },
  ];
  const place = { ...johnson, pots, designLowC: -5 };
  const verdict = (over: Partial<typeof fig>, potLiters = 11, shelterC = 0, of: PlaceOutlook = place) =>
    potVerdict(of, { ...fig, ...over }, 0, { potLiters, shelterC });

  it('is told by the largest it is no smaller than, its own size included', () => {
    expect([2, 3, 10.9, 11, 60].map(liters => verdict({}, liters).container)).toEqual([
      '#1',
      '#1',
      '#1',
      '#3',
      '#3',
    ]);
  });

  it('stays out, is insulated or stored by what the mix reaches, each on its bound', () => {
    // Wood of a first winter stands -5 C here, which is the low itself.
    expect(verdict({ rootInjuryC: figure(-4), rootSevereC: figure(-7) }).care).toBe('stays-out');
    expect(verdict({ rootInjuryC: figure(-3.9), rootSevereC: figure(-7) }).care).toBe('insulate');
    expect(verdict({ rootInjuryC: figure(-2), rootSevereC: figure(-3) }).care).toBe('insulate');
    expect(verdict({ rootInjuryC: figure(-2), rootSevereC: figure(-2.9) }).care).toBe('store');
    expect(verdict({ dormantFirstWinterC: figure(-4.9) }).care).toBe('store');
  });

  it('gains from shelter in its mix, insulated and bare, and for its wood', () => {
    expect(verdict({}, 11, 1).mixLowC).toBe(-3);
    expect(verdict({ dormantFirstWinterC: figure(-4), rootInjuryC: figure(-3) }, 11, 1).care).toBe(
      'stays-out',
    );
    expect(
      verdict({ dormantFirstWinterC: figure(-4), rootInjuryC: figure(-1), rootSevereC: figure(-2) }, 11, 1)
        .care,
    ).toBe('insulate');
    expect(verdict({ rootInjuryC: figure(-1), rootSevereC: figure(-3) }, 11, -1).care).toBe('store');
  });

  it('does not freeze through where its mix reaches 0 C and no less', () => {
    const mild = { ...place, pots: [{ container: '#1', liters: 3, lowC: 0, insulatedLowC: 0 }] };
    expect(verdict({}, 3, 0, mild).because[0]!.text).toContain('does not freeze through');
    expect(verdict({}, 3, -0.5, mild).because[0]!.text).toContain('gets down to');
  });
});

describe('wet', () => {
  const fruits = [
    ['good', 'low', 'closed', 3],
    ['good', 'low', 'sealed', 3],
    ['good', 'some', 'none', 1],
    ['fair', 'low', 'closed', 2],
    ['fair', 'some', 'half-open', 0],
    ['fair', 'high', 'open', -2],
    ['poor', 'high', 'open', -3],
    ['poor', 'low', 'open', -1],
  ] as const;
  it.each(fruits)(
    'fruit %s in rain, that splits %s, with an eye %s has %d points',
    (rain, splits, eye, points) => {
      expect(wetTolerance({ rain, splits, eye })).toBe(points);
      const step = points >= 2 ? -1 : points <= -2 ? 1 : 0;
      const levels = ['sound', 'some-loss', 'heavy-loss'];
      for (const wetness of [0, 1, 2] as const) {
        const { level } = wetVerdict(
          { fromDoy: 250, rainMm: 50, deficitKpa: 1, wetness },
          { ...cultivar().fruit, rain, splits, eye },
        );
        expect(levels.indexOf(level)).toBe(wetness === 0 ? 0 : Math.min(2, Math.max(0, wetness + step)));
      }
    },
  );

  it('leaves splitting out where rain does not split the fruit', () => {
    expect(wetTolerance({ rain: 'fair', splits: 'high', eye: 'none' }, false)).toBe(0);
    expect(wetTolerance({ rain: 'fair', splits: 'low', eye: 'none' }, false)).toBe(0);
  });

  it('calls air damp, dry or neither', () => {
    const air = (deficitKpa: number) =>
      wetVerdict({ fromDoy: null, rainMm: null, deficitKpa, wetness: 1 }, cultivar().fruit).because[0]!.text;
    expect(air(0.59)).toContain('In late summer the rain is not known, and the air is damp');
    expect(air(0.6)).toContain('neither damp nor dry');
    expect(air(1.3)).toContain('neither damp nor dry');
    expect(air(1.31)).toContain('the air is dry');
  });

  const usual = { rainMm: 50, deficitKpa: 1, deficitShare: 0.4, dewPointKnown: true };
  const wetness = (rainMm: number | null, deficitKpa: number, dewPointKnown = true) =>
    ripeningWindow(null, null, [], { ...usual, rainMm, deficitKpa, dewPointKnown }).wetness;

  it('is little below 25 mm a month and much above 75, a step more in damp air and a step less in dry', () => {
    expect([24.9, 25, 75, 75.1].map(rain => wetness(rain, 1))).toEqual([0, 1, 1, 2]);
    expect([0.59, 0.6, 1.3, 1.31].map(deficit => wetness(50, deficit))).toEqual([2, 1, 1, 0]);
    expect(wetness(200, 0.3)).toBe(2);
    expect(wetness(5, 2)).toBe(0);
    expect(wetness(5, 0.3)).toBe(1);
    expect(wetness(200, 2)).toBe(1);
    expect(wetness(null, 1)).toBe(1);
    // Without a dew point air comes out too damp, so it may only speak for the dry side.
    expect(wetness(50, 0.3, false)).toBe(1);
    expect(wetness(50, 1.4, false)).toBe(0);
  });

  it('is of the thirty days from the first ripe fruit of a middle year, over the new year too', () => {
    const rainMm = Array.from({ length: 12 }, (_, month) => 10 * (month + 1));
    const deficits = rainMm.map(mm => mm / 100);
    const at = (p50: number) => ripeningWindow({ p10: 1, p50, p90: 365 }, rainMm, deficits, usual);
    // From August 17 (day 229): 15 days of August, 15 of September.
    expect(at(229)).toMatchObject({ fromDoy: 229, rainMm: (15 * 80 + 15 * 90) / 30 });
    expect(at(229).deficitKpa).toBeCloseTo((15 * 0.8 + 15 * 0.9) / 30, 9);
    // From December 22 (day 356): 10 days of December, 20 of January.
    expect(at(356).rainMm).toBeCloseTo((10 * 120 + 20 * 10) / 30, 9);
    expect(ripeningWindow({ p10: 1, p50: 229, p90: 365 }, null, deficits, usual).rainMm).toBeNull();
  });
});
