/** The growing year and its heat sums. */
import { describe, expect, it } from 'vitest';
import { weatherYears } from '../climate/weatherYears.ts';
import { evidenceFigures } from '../evidence/matchRipening.ts';
import { doyOfIndex, growingCalendar, growingYearStarts, heatMetOn, sumHeat } from './growingYear.ts';

/** A year in 10 degree days a day, and its sums. */
const even = Float64Array.from({ length: 366 }, (_, i) => i * 10);

describe('the day that completes a heat sum', () => {
  it('is the day whose own heat fills it', () => {
    expect(heatMetOn(even, 20, 500)).toBe(69);
    expect(heatMetOn(even, 20, 501)).toBe(70);
    expect(heatMetOn(even, 20, 10)).toBe(20);
    expect(heatMetOn(even, 20, 0)).toBe(20);
  });

  it('is the last day of the year at the latest', () => {
    expect(heatMetOn(even, 300, 650)).toBe(364);
    expect(heatMetOn(even, 300, 651)).toBe(365);
  });
});

describe('the calendar', () => {
  it('counts heat from March 1 and splits the freezes on July 24; half a year later south', () => {
    const north = growingCalendar(40);
    expect([north.firstDoy, doyOfIndex(north, north.heatFrom), doyOfIndex(north, north.midsummer)]).toEqual([
      1, 60, 205,
    ]);
    const south = growingCalendar(-40);
    expect([south.firstDoy, doyOfIndex(south, south.heatFrom), doyOfIndex(south, south.midsummer)]).toEqual([
      182, 244, 24,
    ]);
    expect(growingCalendar(0).firstDoy).toBe(1);
  });

  it('leaves out the half year before the first midwinter, and the season that is cut short', () => {
    const years = weatherYears(evidenceFigures('davis'), 4);
    // The series starts on July 24, day 205 of 365: 161 days before January 1.
    expect([...growingYearStarts(years, 300)]).toEqual([161, 161 + 365, 161 + 730]);
    expect([...growingYearStarts(years, 2)]).toEqual([161, 161 + 365]);
  });
});

it('sums heat from the day it is asked to, and none before', () => {
  const days = 365 * 2;
  const years = {
    lat: 40,
    firstDoy: 205,
    count: 2,
    tminC: new Float32Array(days).fill(12),
    tmaxC: new Float32Array(days).fill(20),
    spreadEstimated: false,
  };
  const sums = new Float64Array(366);
  sumHeat(sums, years, 161, 59, 8, 36);
  expect(sums[59]).toBe(0);
  expect(sums[60]).toBeCloseTo(8, 9);
  expect(sums[365]).toBeCloseTo(306 * 8, 6);
});
