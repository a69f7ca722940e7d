/** A climate from own dates against the curve it is moved along. */
import { describe, expect, it } from 'vitest';
import { dailyCurve } from '../../src/core/climate/dailyCurve.ts';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { figuresFromOwnDates, type NearestPlace, type OwnDates } from '../../src/core/match/ownFigures.ts';
import { ownOutlook } from '../../src/core/match/ownOutlook.ts';
import { heatStarts } from '../../src/core/phenology/heatStart.ts';
import { fig, placeNamed } from './places.ts';

describe('own dates', () => {
  const figures = evidenceFigures('johnson');
  const years = weatherYears(figures);
  const climate = climateSummary(figures, years);
  const near: NearestPlace = {
    name: 'johnson',
    figures,
    climate,
    heatStarts: heatStarts(years, [fig], climate.chill.answer),
  };
  const answers = climate.freeze['32F'].answer;
  const [last, first] = [answers.last.p50!, answers.first.p50!];
  const { mean } = climate.annualMinC.answer;
  const own = (over: Partial<OwnDates>) =>
    figuresFromOwnDates({ last, first, coldestC: mean, ...over }, near);
  const problems = (over: Partial<OwnDates>) => {
    const found = own(over);
    return found.ok ? [] : found.problems.map(({ field, fault }) => `${field}: ${fault}`);
  };

  it('may lie 9 C from the coldest night of the place, and at no more than -60 or 30 C', () => {
    const at = (usual: number, coldestC: number) => {
      const moved = { ...climate.annualMinC, answer: { ...climate.annualMinC.answer, mean: usual } };
      const found = figuresFromOwnDates(
        { last, first, coldestC },
        { ...near, climate: { ...climate, annualMinC: moved } },
      );
      return found.ok ? [] : found.problems.map(({ field, fault }) => `${field}: ${fault}`);
    };
    expect(at(-20, -29)).toEqual([]);
    expect(at(-20, -29.1)).toEqual(['coldestC: far']);
    expect(at(0, 9)).toEqual([]);
    expect(at(0, 9.1)).toEqual(['coldestC: far']);
    // What is more than 8 C off as C, and at most half as far in F, was likely typed in F: -2 F is -18.9 C, -11.5 F is -24.2 C.
    expect(at(-20, -2)).toEqual(['coldestC: unit']);
    expect(at(-20, -11.5)).toEqual(['coldestC: unit']);
    expect(at(-20, -11.6)).toEqual([]);
    expect(at(-18, 30)).toEqual(['coldestC: unit']);
    expect(at(20, 30.1)).toEqual(['coldestC: unit']);
    expect(at(-55, -60)).toEqual([]);
    expect(at(-55, -60.1)).toEqual(['coldestC: number']);
    expect(at(-20, Number.NaN)).toEqual(['coldestC: number']);
  });

  it("that are the place's own move nothing", () => {
    const found = own({});
    if (!found.ok) throw new Error('not ok');
    found.figures.tminC.forEach((low, month) => {
      expect(low).toBeCloseTo(figures.tminC[month]!, 9);
    });
  });

  it('move the curve at each date by what it differs there, minima, maxima and dew points alike', () => {
    const humid = { ...figures, dewPointC: figures.tminC.map(low => low - 1) };
    const found = figuresFromOwnDates(
      { last: '05-01', first: '10-10', coldestC: mean - 4 },
      { ...near, figures: humid },
    );
    if (!found.ok) throw new Error('not ok');
    const moves = found.figures.tminC.map((low, month) => low - figures.tminC[month]!);
    found.figures.tmaxC.forEach((high, month) => {
      expect(high - figures.tmaxC[month]!).toBeCloseTo(moves[month]!, 9);
      expect(found.figures.dewPointC![month]! - humid.dewPointC[month]!).toBeCloseTo(moves[month]!, 9);
    });
    const before = dailyCurve(figures.tminC);
    const after = dailyCurve(found.figures.tminC);
    const doy = (date: string) => {
      const [month, day] = date.split('-').map(Number) as [number, number];
      return [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334][month - 1]! + day;
    };
    // The night of the visitor's date is as cold as that of the place's date was.
    expect(after[doy('05-01') - 1]).toBeCloseTo(before[doy(last) - 1]!, 0);
    expect(after[doy('10-10') - 1]).toBeCloseTo(before[doy(first) - 1]!, 0);
    // Midsummer, July 24, by the mean of the two; the coldest day by the night.
    const spring = before[doy(last) - 1]! - before[doy('05-01') - 1]!;
    const fall = before[doy(first) - 1]! - before[doy('10-10') - 1]!;
    expect(after[204]! - before[204]!).toBeCloseTo((spring + fall) / 2, 0);
    const coldest = before.indexOf(Math.min(...before));
    expect(after[coldest]! - before[coldest]!).toBeCloseTo(-4, 0);
  });

  it('are refused beyond 9 C from the place, beyond any winter, and where the night looks like F', () => {
    expect(problems({ coldestC: mean - 8.9 })).toEqual([]);
    expect(problems({ coldestC: mean - 9.1 })).toEqual(['coldestC: far']);
    expect(problems({ coldestC: mean - 9 })).toEqual([]);
    expect(problems({ coldestC: -60 })).toEqual(['coldestC: far']);
    expect(problems({ coldestC: -60.1 })).toEqual(['coldestC: number']);
    const said = (coldestC: number) => {
      const found = own({ coldestC });
      return found.ok ? '' : found.problems[0]!.text;
    };
    expect(said(30)).toMatch(/^Check the unit of the coldest night/);
    expect(said(30.1)).toMatch(/is no coldest night of a winter. Check the unit/);
    expect(problems({ coldestC: Number.POSITIVE_INFINITY })).toEqual(['coldestC: number']);
    // Typed as it stands in F: as C it is far too warm, and as F it is the place's own.
    expect(problems({ coldestC: mean * 1.8 + 32 })).toEqual(['coldestC: unit']);
  });

  it('leave the outlook of the place itself as it was', () => {
    const found = ownOutlook({ last, first, coldestC: mean }, near, [fig]);
    if (!found.ok) throw new Error('not ok');
    const place = placeNamed('johnson');
    expect(Math.abs(found.outlook.designLowC - place.designLowC)).toBeLessThan(1);
    expect(found.outlook.species.get('fig')!.heatFrom).toBe(place.species.get('fig')!.heatFrom);
  });
});
