/** Bloom, fruit growth and what a crop asks for. */
import { describe, expect, it } from 'vitest';
import { fig, figure } from '../../../tests/match/places.ts';
import type { Species } from '../records/species.ts';
import {
  BLOOM_SHARE,
  bloomOn,
  DAYS_SD,
  daysFromBloom,
  leastHeatMetOn,
  NEED_SD_SHARE,
  ripeningFigure,
  ripeningNeed,
} from './fruit.ts';
import { growingCalendar } from './growingYear.ts';

/** A year in 10 degree days a day, and its sums. */
const even = Float64Array.from({ length: 366 }, (_, i) => i * 10);
const north = growingCalendar(40);
const persimmon: Species = {
  ...fig,
  heatNeed: { main: {}, breba: {} },
  bloom: {
    heat: figure(400),
    toRipeDays: { early: figure(120), mid: figure(150) },
    leastHeat: figure(1000),
  },
};

describe('full bloom', () => {
  it('is the day that completes the heat above the baseline', () => {
    expect(bloomOn({ heatSum: even, from: 59, baseline: 590 }, 400)).toBe(98);
    expect(bloomOn({ heatSum: even, from: 59, baseline: 490 }, 400)).toBe(88);
    expect(bloomOn({ heatSum: even, from: 59, baseline: 590 }, 4000)).toBe(365);
  });
});

describe('fruit growth', () => {
  it('takes its days from a bloom on May 25, or November 23 south', () => {
    expect(north.usualBloom).toBe(144);
    expect(daysFromBloom(144, 150, north)).toBe(294);
    const south = growingCalendar(-40);
    expect(daysFromBloom(south.usualBloom, 150, south)).toBe(south.usualBloom + 150);
    // November 23 is day 327, 145 days after July 1, day 182.
    expect(south.usualBloom).toBe(145);
  });

  it('makes up for two fifths of a late bloom', () => {
    expect(daysFromBloom(154, 150, north)).toBe(300);
    expect(daysFromBloom(134, 150, north)).toBe(288);
    expect(BLOOM_SHARE).toBeCloseTo(0.6, 9);
  });

  it('waits for the least heat', () => {
    expect(leastHeatMetOn(even, 144, 1000)).toBe(243);
    expect(leastHeatMetOn(even, 144, 5000)).toBe(365);
    expect(leastHeatMetOn(even, 365, 0)).toBe(365);
    expect(leastHeatMetOn(even, 364, 10)).toBe(364);
  });
});

describe('what a crop asks for', () => {
  it('is heat where the record gives heat', () => {
    const need = { by: 'heat', budbreakHeat: 164, leastDays: 0 };
    expect(ripeningNeed(fig, 'main', 'mid')).toEqual({ ...need, heat: 1890 });
    expect(ripeningNeed(fig, 'breba', 'mid')).toEqual({ ...need, heat: 1070 });
    const slow = { ...fig, leastDays: { main: figure(90), breba: null } };
    expect(ripeningNeed(slow, 'main', 'mid')).toMatchObject({ leastDays: 90 });
    expect(ripeningNeed(slow, 'breba', 'mid')).toMatchObject({ leastDays: 0 });
    expect(ripeningNeed(fig, 'breba', 'late')).toBeNull();
    expect(ripeningFigure(fig, 'main', 'mid')).toBe(fig.heatNeed.main.mid);
  });

  it('is bloom and days where the record gives bloom, with the least heat in proportion to the days', () => {
    expect(ripeningNeed(persimmon, 'main', 'mid')).toEqual({
      by: 'bloom',
      bloomHeat: 400,
      days: 150,
      leastHeat: 1000,
    });
    expect(ripeningNeed(persimmon, 'main', 'early')).toMatchObject({ days: 120, leastHeat: 800 });
    expect(ripeningNeed(persimmon, 'main', 'late')).toBeNull();
    expect(ripeningNeed(persimmon, 'breba', 'mid')).toBeNull();
    const onlyEarly = { ...persimmon, bloom: { ...persimmon.bloom!, toRipeDays: { early: figure(120) } } };
    expect(ripeningNeed(onlyEarly, 'main', 'early')).toMatchObject({ leastHeat: 1000 });
  });
});

it('knows a need to about a twelfth, and days to about a week', () => {
  // Souza et al. 2009, Revista Brasileira de Fruticultura 31(2):314-322: two plantings of one fig asked for 1,955 and 2,200 degree days.
  const apart = (2200 - 1955) / ((2200 + 1955) / 2);
  expect(NEED_SD_SHARE).toBeGreaterThan(apart / 2);
  expect(NEED_SD_SHARE).toBeLessThan(apart);
  // The mean error of a normal distribution is 0.8 of its standard deviation: 6 to 7 days in the fit.
  expect(DAYS_SD * Math.sqrt(2 / Math.PI)).toBeCloseTo(6.5, 0);
});
