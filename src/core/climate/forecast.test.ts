import { describe, expect, it } from 'vitest';
import { addDays, day } from '../days.ts';
import { seasonStartDoy } from './calendar.ts';
import { chanceOfNightAtOrBelow, forecastDay } from './forecast.ts';
import type { WeatherYears } from './weatherYears.ts';

/** Seasons from July 24 whose only cold night falls on a season day that moves by one from season to season. */
function yearsWithColdNightOnDay(firstDay: number, count: number): WeatherYears {
  const tminC = new Float32Array(count * 365).fill(10);
  for (let season = 0; season < count; season += 1) tminC[season * 365 + firstDay + season] = -5;
  const tmaxC = new Float32Array(count * 365).fill(20);
  return { lat: 40, firstDoy: seasonStartDoy(40), count, tminC, tmaxC, spreadEstimated: false };
}
const untilFreeze = () => (tminC: number) => tminC <= 0;

describe('forecastDay', () => {
  it('gives the 10, 50 and 90 % days of years in which the thing happens', () => {
    const years = yearsWithColdNightOnDay(100, 11);
    const start = day('2026-07-24');
    // The eleventh season is used only where the series still holds the whole horizon.
    expect(forecastDay(years, start, untilFreeze, 200)).toEqual({
      range: { from: addDays(start, 101), to: addDays(start, 109) },
      median: addDays(start, 105),
      share: 1,
    });
  });

  it('runs on across the end of a season', () => {
    const years = yearsWithColdNightOnDay(100, 12);
    const late = forecastDay(years, day('2027-06-01'), untilFreeze);
    // Eleven seasons whose cold night comes 101 to 111 days after July 24: the second is past 10 % of them.
    expect(late.range?.from).toBe('2027-11-03');
    expect(late.share).toBe(1);
  });

  it('gives no date where the thing happens in fewer than one year in ten', () => {
    const years = yearsWithColdNightOnDay(100, 11);
    const never = forecastDay(years, day('2026-07-24'), () => tminC => tminC < -50, 300);
    expect(never).toEqual({ range: null, median: null, share: 0 });
  });

  it('lets observed days stand in for simulated ones', () => {
    const years = yearsWithColdNightOnDay(100, 11);
    const start = day('2026-07-24');
    const seen = { day: day('2026-08-03'), tminC: -1, tmaxC: 5 };
    const forecast = forecastDay(years, start, untilFreeze, 200, [seen]);
    expect(forecast.range).toEqual({ from: '2026-08-03', to: '2026-08-03' });
    const warm = Array.from({ length: 120 }, (_, i) => ({ day: addDays(start, i), tminC: 8, tmaxC: 18 }));
    expect(forecastDay(years, start, untilFreeze, 200, warm).share).toBe(0);
  });

  it('keeps the calendar right over February 29', () => {
    const count = 3;
    const tminC = new Float32Array(count * 365).fill(10);
    for (let season = 0; season < count; season += 1) tminC[season * 365 + 224] = -5; // March 5, 224 days after July 24
    const years = { ...yearsWithColdNightOnDay(0, count), tminC };
    expect(forecastDay(years, day('2027-12-01'), untilFreeze, 120).median).toBe('2028-03-05');
    expect(forecastDay(years, day('2026-12-01'), untilFreeze, 120).median).toBe('2027-03-05');
  });

  it('counts days from zero and makes the rule anew for every year', () => {
    const counts: number[] = [];
    forecastDay(
      yearsWithColdNightOnDay(100, 3),
      day('2026-07-24'),
      () => {
        let calls = 0;
        return (_low, _high, since) => {
          expect(since).toBe(calls);
          calls += 1;
          counts.push(calls);
          return calls === 2;
        };
      },
      10,
    );
    expect(counts).toEqual([1, 2, 1, 2, 1, 2]);
  });
});

describe('chances of a day of the year', () => {
  it('are shares of the seasons', () => {
    const years = yearsWithColdNightOnDay(100, 10);
    const nights = chanceOfNightAtOrBelow(years, 0);
    expect(nights[305 - 1]).toBeCloseTo(0.1); // November 1, 100 days after July 24
    expect(nights.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1);
  });
});
