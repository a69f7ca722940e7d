/** The climate of a point without published figures, beside the summary of a place from the same weather years. */
import { describe, expect, it } from 'vitest';
import { chillOfYears } from '../../src/core/climate/chillYears.ts';
import { nothingPublished } from '../../src/core/climate/figures.ts';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { modeledClimate } from '../../src/core/match/modeledClimate.ts';
import { leavingHome, parcelsTo, townClimate } from '../../src/core/match/townOutlook.ts';
import { heatStarts } from '../../src/core/phenology/heatStart.ts';
import { normaliseSending } from '../../src/core/records/sending.ts';
import { chilly, fig, movedBy } from './places.ts';

const figures = { ...evidenceFigures('johnson'), published: nothingPublished };
const years = weatherYears(figures, 200);
const summary = climateSummary(figures, years);
const modeledWith = (coldestC: number | null) =>
  modeledClimate({ figures, years, coldestC, chill: summary.chill, standing: 'modeled', source: 'a test' });

describe('a climate that is modeled', () => {
  it('has the freezes, coldest nights, season and class that the summary of a place reads off the same years', () => {
    const modeled = modeledWith(null);
    for (const key of ['36F', '32F', '28F', '24F', '20F'] as const)
      expect(modeled.freeze[key].answer).toEqual(summary.freeze[key].answer);
    expect(modeled.annualMinC.answer.mean).toBeCloseTo(summary.annualMinC.answer.mean, 9);
    expect(modeled.annualMinC.answer.p10).toBeCloseTo(summary.annualMinC.answer.p10, 9);
    expect(modeled.season).toEqual(summary.seasonDays.answer);
    expect(modeled.class.answer).toEqual(summary.class.answer);
    expect(modeled.chill).toBe(summary.chill);
    expect(modeled.freeze['32F']).toMatchObject({ standing: 'modeled', source: 'a test' });
  });

  it('moves the low of one winter in ten with a coldest night that is known, and the winter with it', () => {
    const usual = modeledWith(null).annualMinC.answer;
    const { answer } = modeledWith(usual.mean - 10).annualMinC;
    expect(answer.mean).toBeCloseTo(usual.mean - 10, 9);
    expect(answer.p10).toBeCloseTo(usual.p10 - 10, 9);
    expect(modeledWith(-31).class.answer.winter).toBe('frozen');
    expect(modeledWith(6).class.answer.winter).toBe('frost-free');
  });
});

describe('a town', () => {
  const town = townClimate(figures, [fig, chilly], 60);

  it('is drawn from its own figures, with its chill and the days from which heat counts', () => {
    expect(town.years.count).toBe(60);
    expect(town.climate.freeze['32F'].standing).toBe(
      figures.sdTminC === null ? 'modeled from an estimate' : 'modeled',
    );
    expect(town.heatStarts).toEqual(heatStarts(town.years, [fig, chilly], town.climate.chill.answer));
    // Eight winters instead of a hundred and more: the middle of the hours is good to a tenth or so.
    const hours = (of: typeof summary.chill) => (of.answer.hours.p10 + of.answer.hours.p90) / 2;
    expect(hours(town.climate.chill as typeof summary.chill) / hours(summary.chill)).toBeGreaterThan(0.85);
    expect(hours(town.climate.chill as typeof summary.chill) / hours(summary.chill)).toBeLessThan(1.15);
  });

  it('is drawn over 160 seasons, and eight winters for its chill, where nobody asks for more', () => {
    const usual = townClimate(figures, [fig]);
    expect(usual.years.count).toBe(160);
    expect(usual.climate.freeze['32F'].source).toContain('160 simulated years');
    expect(usual.climate.chill.answer).toEqual(chillOfYears(usual.years, 8));
    expect(townClimate({ ...figures, sdTminC: null }, [fig], 60).climate.freeze['32F'].standing).toBe(
      'modeled from an estimate',
    );
  });

  it('counts both ends of the way over as many years', () => {
    const rules = normaliseSending({ weekdays: ['mon'], transit_days: 3, not_to: [] });
    const home = {
      name: 'home',
      country: 'US',
      figures: movedBy(figures, 3),
      freeze32F: summary.freeze['32F'].answer,
    };
    const parcels = parcelsTo('there', town, leavingHome(home, rules, town.years.count), rules);
    expect([parcels.home.name, parcels.home.country, parcels.there.name]).toEqual(['home', 'US', 'there']);
    // Shares are counted in sixtieths at both ends.
    for (const { risks } of [parcels.home, parcels.there])
      for (const share of risks['dormant-pot'].plain.cold)
        expect(Math.abs(share * 60 - Math.round(share * 60))).toBeLessThan(1e-6);
    const winterDay = 15;
    const cold = (end: typeof parcels.there | typeof parcels.home) =>
      end.risks['dormant-pot'].plain.cold[winterDay]!;
    expect(cold(parcels.home)).toBeLessThan(cold(parcels.there));
  });
});
