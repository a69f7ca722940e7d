/** Water, days of a season, turning points and protection, each figure worked out beside it. */
import { describe, expect, it } from 'vitest';
import { limitC, winterProtection } from '../../src/core/care/protection.ts';
import { dayOfSeason, monthDayOfSeason, seasonDayOf } from '../../src/core/care/seasonClock.ts';
import {
  growthEnds,
  growthStarts,
  lastFeed,
  moveInDays,
  potWinter,
  safeDay,
  wakeDay,
  warmerThan,
} from '../../src/core/care/turningPoints.ts';
import {
  plantedWateringDays,
  plantedWaterLiters,
  potUseLiters,
  potWateringDays,
  usualCaliperMm,
  waterLiters,
} from '../../src/core/care/watering.ts';
import { day } from '../../src/core/days.ts';
import { fig, figure } from '../match/places.ts';
import { about, coldYear, mildYear, never, sawtooth } from './roundYear.ts';

describe('water', () => {
  it('in a pot follows evapotranspiration and the two-thirds power of its volume', () => {
    // 0.19 liters a mm in 11.4 liters, fitted to Beeson 2010, HortScience 45:1260: 1.3 liters a day at about 7 mm.
    expect(potUseLiters(5, 11.4)).toBeCloseTo(0.95, 9);
    expect(potUseLiters(7, 11.4)).toBeCloseTo(1.33, 2);
    expect(potUseLiters(5, 8 * 11.4)).toBeCloseTo(4 * 0.95, 9);
    expect(potWateringDays(5, 11.4)).toBeCloseTo((0.14 * 11.4) / 0.95, 9);
    expect([potWateringDays(60, 11.4), potWateringDays(0.1, 11.4), potWateringDays(0, 11.4)]).toEqual([
      1, 10, 10,
    ]);
    expect(waterLiters(10)).toEqual({ low: 1.5, high: 2.5 });
    expect(waterLiters(10, { low: 0.1, high: 0.1 })).toEqual({ low: 1, high: 1 });
  });

  it('in the ground is every 1, 2.5 and 7 days at 5 mm, stretched by the weather to two weeks at most', () => {
    // University of Florida IFAS EP113 and University of Minnesota Extension: daily, every two to three days, weekly.
    const stages = ['first-weeks', 'rooting', 'first-year'] as const;
    expect(stages.map(stage => plantedWateringDays(stage, 5))).toEqual([1, 2.5, 7]);
    expect(stages.map(stage => plantedWateringDays(stage, 2.5))).toEqual([2, 5, 14]);
    expect(stages.map(stage => plantedWateringDays(stage, 10))).toEqual([1, 1.25, 3.5]);
    expect(stages.map(stage => plantedWateringDays(stage, 0))).toEqual([14, 14, 14]);
  });

  it('at a time is 2.5 gallons an inch of stem, or 27.5 % of the pot where that is more', () => {
    // UF/IFAS EP113, 2 to 3 gallons; UMN Extension, 25 to 30 % of the container.
    expect(plantedWaterLiters(25.4, 1)).toBeCloseTo(2.5 * 3.785411784, 6);
    expect(plantedWaterLiters(5, 40)).toBeCloseTo(11, 9);
    expect(usualCaliperMm(11.4)).toBeCloseTo(19.05, 6);
    expect(usualCaliperMm(8 * 11.4)).toBeCloseTo(38.1, 6);
  });
});

describe('days of a season', () => {
  it('are counted from July 24, in years named by their July', () => {
    expect(seasonDayOf(day('2026-07-23'), 205)).toEqual({ season: 2025, at: 364 });
    expect(seasonDayOf(day('2026-07-24'), 205)).toEqual({ season: 2026, at: 0 });
    expect(seasonDayOf(day('2027-01-01'), 205)).toEqual({ season: 2026, at: 161 });
    const on = (at: number) => dayOfSeason({ season: 2026, at }, 205);
    expect([on(0), on(160), on(161), on(364), on(365), on(-1), on(-204), on(-205)]).toEqual([
      '2026-07-24',
      '2026-12-31',
      '2027-01-01',
      '2027-07-23',
      '2027-07-24',
      '2026-07-23',
      '2026-01-01',
      '2025-12-31',
    ]);
    expect([monthDayOfSeason(160.6, 205), monthDayOfSeason(365, 205)]).toEqual(['01-01', '07-24']);
  });
});

describe('turning points', () => {
  it('say how a pot winters: stored in five years of ten, sheltered in one, else out', () => {
    expect(potWinter(mildYear({ potRiskFirst: { p10: 150, p50: null, p90: null } }))).toBe('shelter');
    expect(potWinter(mildYear({ potRiskFirst: { p10: 150, p50: 170, p90: null } }))).toBe('store');
    const night = { young: { p10: 150, p50: null, p90: null }, established: never };
    expect(potWinter(mildYear({ coldRiskFirst: night }))).toBe('shelter');
  });

  it('find the first day of a mean after the coldest weeks, over the turn of the season', () => {
    // 30 - 36 x (365 - at) / 185 from day 180 on.
    const year = coldYear();
    expect(warmerThan(year, -6)).toBe(180);
    expect(warmerThan(year, 8)).toBe(252);
    expect(warmerThan(year, 29.9)).toBe(365);
    expect(warmerThan(year, 30.1)).toBeNull();
    expect(warmerThan(coldYear({ meanC: sawtooth(10, 30) }), 10)).toBe(180);
  });

  it('start growth with budbreak, or a month after the coldest days where nothing makes it rest', () => {
    expect(growthStarts(coldYear())).toEqual({ early: 280, middle: 290 });
    expect(growthStarts(coldYear({ evergreen: true }))).toEqual({ early: 210, middle: 210 });
    expect(growthStarts(coldYear({ budbreak: never }))).toEqual({ early: 210, middle: 210 });
    expect(growthStarts(coldYear({ budbreak: { p10: null, p50: 290, p90: null } })).early).toBe(290);
    expect(growthEnds(coldYear())).toBe(455);
    expect(growthEnds(coldYear({ leafFall: never }))).toBe(180 - 30 + 365);
  });

  it('end feeding ten weeks before the first freeze or leaf fall, whichever is first', () => {
    expect(lastFeed(coldYear())).toBe(80 - 70);
    expect(lastFeed(coldYear({ leafFall: about(85, 10) }))).toBe(75 - 70);
    expect(lastFeed(coldYear({ firstFreeze: { ...coldYear().firstFreeze, '32F': never } }))).toBe(80 - 70);
    expect(
      lastFeed(coldYear({ firstFreeze: { ...coldYear().firstFreeze, '32F': never }, leafFall: never })),
    ).toBe(150 - 70);
  });

  it('wake a stored tree three to six weeks before the safe day', () => {
    expect(safeDay(coldYear())).toBe(290);
    const wake = (meanC: number[]) => wakeDay(coldYear({ meanC }), 290);
    expect(wake(sawtooth(-6, 30))).toBe(252);
    expect(wake(sawtooth(9, 30))).toBe(248);
    expect(wake(sawtooth(-30, 26))).toBe(269);
    expect(wake(sawtooth(-30, 7))).toBe(269);
  });

  it('put a pot away between what it should meet and what it does not stand', () => {
    const year = (over: object) => coldYear(over);
    // Half-ripe: after its leaves (90) and the light frost (87), two weeks at the most.
    expect(moveInDays(year({}), 'half-ripe')).toEqual({ from: 90, to: 104 });
    const nights = (meets: number, before: number) => ({
      nights: { ...coldYear().nights, soft: { meets: about(meets, 10), before: about(before, 10) } },
    });
    // Soft: with the first light frost or its leaves, and before a night that one year of ten has.
    expect(moveInDays(year(nights(82, 100)), 'soft')).toEqual({ from: 82, to: 89 });
    expect(moveInDays(year(nights(95, 130)), 'soft')).toEqual({ from: 90, to: 104 });
    expect(moveInDays(year(nights(86, 100)), 'soft')).toEqual({ from: 84, to: 89 });
    // Never before leaves may fall, however early the cold.
    expect(moveInDays(year(nights(70, 75)), 'soft')).toEqual({ from: 80, to: 80 });
    expect(moveInDays(year({ ...nights(82, 100), leafFall: never }), 'soft')).toEqual({ from: 0, to: 14 });
  });
});

describe('protection', () => {
  const species = { ...fig, dormantEstablishedC: figure(-10), dormantFirstWinterC: figure(-5) };

  it('stands on what wood of its age stands', () => {
    expect(([1, 2, 3] as const).map(winter => limitC(species, winter))).toEqual([-5, -7, -10]);
    expect(limitC({ ...species, dormantFirstWinterC: figure(-8) }, 2)).toBe(-8);
    expect(limitC({ ...species, dormantFirstWinterC: figure(-12) }, 2)).toBe(-10);
  });

  it('says of a second winter that its limit is ours, and of the others what their figures rest on', () => {
    const known = {
      ...species,
      dormantEstablishedC: { ...figure(-10), standing: 'published' as const },
      dormantFirstWinterC: { ...figure(-5), standing: 'practice' as const },
    };
    const limit = (winter: 1 | 2 | 3) => winterProtection(known, winter, -8).because[1]!;
    expect([1, 2, 3].map(winter => limit(winter as 1 | 2 | 3).standing)).toEqual([
      'practice',
      'ours',
      'published',
    ]);
    expect(limit(1).text).toBe('Dormant fig wood is hardy to 23 F (-5 C) in its first winter.');
    expect(limit(2).text).toMatch(/19 F \(-7 C\) in its second winter/);
    expect(limit(3).text).toMatch(/14 F \(-10 C\) once established/);
  });

  it.each([
    [-7, 'none'],
    [-7.1, 'mulch'],
    [-10, 'mulch'],
    [-10.1, 'wrap'],
    [-16, 'wrap'],
    [-16.1, 'bury'],
    [-22, 'bury'],
    [-22.1, 'pot-only'],
  ] as const)('for a low of %d C once established is %s', (lowC, method) => {
    const found = winterProtection(species, 3, lowC);
    expect(found.method).toBe(method);
    expect(found.marginC).toBeCloseTo(lowC + 10, 9);
  });
});
