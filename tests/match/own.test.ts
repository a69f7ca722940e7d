/** A climate from a visitor's own dates, and cultivars to offer instead. */
import { describe, expect, it } from 'vitest';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { doyFromMonthDay } from '../../src/core/days.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { alternatives } from '../../src/core/match/alternatives.ts';
import { matchAll } from '../../src/core/match/match.ts';
import { figuresFromOwnDates, type NearestPlace, type OwnDates } from '../../src/core/match/ownFigures.ts';
import { ownOutlook } from '../../src/core/match/ownOutlook.ts';
import { heatStarts } from '../../src/core/phenology/heatStart.ts';
import { context, cultivar, fig, matchPlace, placeNamed, southOf, type TestPlace } from './places.ts';

function near(name: TestPlace, south = false): NearestPlace {
  const figures = south ? southOf(evidenceFigures(name)) : evidenceFigures(name);
  const years = weatherYears(figures);
  const climate = climateSummary(figures, years);
  return { name, figures, climate, heatStarts: heatStarts(years, [fig], climate.chill.answer) };
}

const kansas = near('johnson');
const usual: OwnDates = { last: '04-10', first: '10-24', coldestC: -19 };

function faults(own: Partial<OwnDates>, place: NearestPlace = kansas) {
  const found = figuresFromOwnDates({ ...usual, ...own }, place);
  return found.ok ? [] : found.problems.map(({ field, fault }) => `${field}: ${fault}`);
}

describe('own dates', () => {
  it.each([
    ['as at the reference place', usual],
    ['a shorter, colder year', { last: '04-24', first: '10-12', coldestC: -22 }],
    ['a longer, milder year', { last: '03-30', first: '11-03', coldestC: -16 }],
    ['a hollow: freezes early and late, winter alike', { last: '04-28', first: '10-08', coldestC: -19 }],
  ])('come back from the model: %s', (_what, own) => {
    const found = figuresFromOwnDates(own, kansas);
    if (!found.ok) throw new Error(JSON.stringify(found.problems));
    const { freeze, annualMinC } = climateSummary(found.figures);
    const { first, last } = freeze['32F'].answer;
    const off = (got: string | null, wanted: string) =>
      Math.abs(doyFromMonthDay(got!)! - doyFromMonthDay(wanted)!);
    expect(off(last.p50, own.last)).toBeLessThanOrEqual(5);
    expect(off(first.p50, own.first)).toBeLessThanOrEqual(5);
    expect(Math.abs(annualMinC.answer.mean - own.coldestC)).toBeLessThanOrEqual(1.5);
    expect(found.notes[0]).toContain('johnson');
  });

  it('work south of the equator, with a southern reference place', () => {
    const own = { last: '10-12', first: '04-24', coldestC: -19 };
    expect(faults(own, near('johnson', true))).toEqual([]);
  });

  it('in the wrong order, or of the other half of the world, are told', () => {
    expect(faults({ last: '10-24', first: '04-10' })).toEqual(['last: order']);
    expect(faults({}, near('johnson', true))).toEqual(['last: order']);
    expect(faults({ last: '05-01', first: '05-01' })).toEqual(['last: order']);
    const found = figuresFromOwnDates({ ...usual, last: '10-24', first: '04-10' }, kansas);
    expect(found.ok === false && found.problems[0]!.text).toMatch(/Swap.*south of the equator/);
  });

  it('that are none are told, each', () => {
    expect(faults({ last: '02-30', first: 'October' })).toEqual(['last: date', 'first: date']);
  });

  it('a coldest night in F is noticed', () => {
    // 0 F at a place with -2 F, typed as if it were C.
    expect(faults({ coldestC: 0 })).toEqual(['coldestC: unit']);
    expect(faults({ coldestC: 34 })).toEqual(['coldestC: unit']);
    expect(faults({ coldestC: -18 })).toEqual([]);
  });

  it('a coldest night that is no number or no winter is told', () => {
    expect(faults({ coldestC: Number.NaN })).toEqual(['coldestC: number']);
    expect(faults({ coldestC: -70 })).toEqual(['coldestC: number']);
    expect(faults({ coldestC: -33 })).toEqual(['coldestC: far']);
  });

  it('that do not fit the reference place, or one without freezes, are told', () => {
    expect(faults({ last: '06-25', first: '08-10' })).toEqual(['last: far', 'first: far']);
    expect(faults({ coldestC: 3 }, near('sfax'))).toEqual(['place: no-freeze']);
  });

  it('give verdicts close to those of the reference place when they are its own', () => {
    const reference = placeNamed('johnson');
    const { first, last } = kansas.climate.freeze['32F'].answer;
    const own = { last: last.p50!, first: first.p50!, coldestC: kansas.climate.annualMinC.answer.mean };
    const found = ownOutlook(own, kansas, [fig]);
    if (!found.ok) throw new Error(JSON.stringify(found.problems));
    const classes = (['very-early', 'early', 'mid', 'late'] as const).map(ripening => cultivar({ ripening }));
    const here = matchAll(found.outlook, classes, [fig], context);
    const there = matchAll(reference, classes, [fig], context);
    here.forEach((match, i) => {
      expect(match.level).toBe(there[i]!.level);
      expect(Math.abs(match.ripening[0]!.share - there[i]!.ripening[0]!.share)).toBeLessThanOrEqual(0.1);
    });
    expect(ownOutlook({ ...own, coldestC: Number.NaN }, kansas, [fig]).ok).toBe(false);
  });
});

describe('alternatives', () => {
  const place = placeNamed('bonn');
  const candidate = (over: Parameters<typeof cultivar>[0]) => {
    const each = cultivar(over);
    return { cultivar: each, match: matchPlace(place, each, fig, context) };
  };
  const wanted = cultivar({ id: 'wanted', ripening: 'late' });

  it('are nearest by flavor, ripening and how they do there; what cannot live there is left out', () => {
    const all = [
      candidate({ id: 'wanted', ripening: 'late' }),
      candidate({ id: 'other-flavor', ripening: 'early', flavor: 'toffee' }),
      candidate({ id: 'same-flavor', ripening: 'early' }),
      candidate({ id: 'no-fruit', ripening: 'late', pollination: 'wasp-all' }),
    ];
    const found = alternatives(wanted, all);
    expect(found.map(each => each.cultivar)).toEqual(['same-flavor', 'other-flavor']);
    expect(found[0]!.because.map(({ text }) => text)).toContain('It has the same kind of flavor.');
    expect(found[0]!.level).toBe(all[2]!.match.level);
  });

  it('do without a place, in a fixed order, as many as asked for', () => {
    const all = ['d', 'b', 'c', 'a'].map(id => ({
      cultivar: cultivar({ id, ripening: 'late' }),
      match: null,
    }));
    expect(alternatives(wanted, all, 3).map(each => [each.cultivar, each.level])).toEqual([
      ['a', null],
      ['b', null],
      ['c', null],
    ]);
    expect(alternatives(wanted, [])).toEqual([]);
  });
});
