import { describe, expect, test } from 'vitest';
import { nothingPublished } from './figures.ts';
import { completeDates } from './publishedDates.ts';
import { climateSummary } from './summary.ts';

const northStart = 205;
const modeled = { p10: '10-19', p50: '10-31', p90: '11-14' };

describe('freeze dates of which only the middle one is published', () => {
  test('take the early and late date from the model, moved as the middle one', () => {
    expect(completeDates({ p50: '10-28' }, modeled, northStart)).toEqual({
      p10: '10-16',
      p50: '10-28',
      p90: '11-11',
    });
  });

  test('cross the new year', () => {
    const mild = { p10: '12-20', p50: '12-30', p90: null };
    expect(completeDates({ p50: '01-04' }, mild, northStart)).toEqual({
      p10: '12-25',
      p50: '01-04',
      p90: null,
    });
  });

  test('keep what is published, a published never included', () => {
    const published = { p10: '10-01', p50: '10-28', p90: null };
    expect(completeDates(published, modeled, northStart)).toEqual(published);
  });
});

test('the season of Asheville is as long as its published middle dates say', () => {
  // NOAA U.S. Climate Normals 1991-2020, USW00003812: last 32 F April 9, first October 28, 202 days apart.
  const source = 'NOAA';
  const summary = climateSummary({
    lat: 35.4319,
    tmaxC: [8.9, 11, 15.4, 20.4, 24.1, 27.9, 29, 28.5, 25.6, 20.6, 15.2, 10.6],
    tminC: [-2.3, -0.8, 3, 6.8, 11.8, 16.2, 18, 17.8, 14.6, 8.1, 2.1, -0.4],
    rainMm: null,
    dewPointC: null,
    sdTminC: [5.77, 5.1, 4.99, 4.4, 3.82, 2.62, 2.25, 2.32, 3.25, 4.5, 4.77, 4.92],
    sdTmaxC: [6.27, 5.7, 5.67, 5.22, 4.39, 3.07, 2.64, 2.69, 3.64, 5.15, 5.56, 5.38],
    sdAbout: 'month',
    lag1: null,
    published: {
      ...nothingPublished,
      freeze: new Map([[32, { first: { p50: '10-28' }, last: { p50: '04-09' }, none: null, source }]]),
    },
  });
  expect(summary.freeze['32F'].standing).toBe('published');
  expect(summary.freeze['32F'].source).toMatch(/early and late dates modeled/);
  expect(Math.abs(summary.seasonDays.answer.p50 - 202)).toBeLessThanOrEqual(2);
  expect(summary.seasonDays.source).toMatch(/moved to the published middle freeze dates/);
});
