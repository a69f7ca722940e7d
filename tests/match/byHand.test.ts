/** What is counted over weather years, counted again by hand without any shortcut, or on years whose answer can be seen. */
import { describe, expect, it } from 'vitest';
import { sortedQuantile } from '../../src/core/climate/quantiles.ts';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { type WeatherYears, weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { placeOutlook } from '../../src/core/match/placeOutlook.ts';
import { arrivalYear } from '../../src/core/match/receiving.ts';
import { passingDays, tripWaits } from '../../src/core/match/trips.ts';
import { freezeThroughDays, winterLows } from '../../src/core/match/winterLows.ts';
import { chillHoursOfDay } from '../../src/core/phenology/dormancy.ts';
import { heatStarts } from '../../src/core/phenology/heatStart.ts';
import { classLiters, containerClasses } from '../../src/core/records/container.ts';
import { fig, figure } from './places.ts';

const neverFreezes = {
  share: 0,
  first: { p10: null, p50: null, p90: null },
  last: { p10: null, p50: null, p90: null },
} as never;

describe('the coldest of each winter', () => {
  const years = weatherYears(evidenceFigures('johnson'), 310);
  const { sortedC, pots } = winterLows(years);

  /** Lowest air and mix of one winter, C: frozen degree-days add up while it is cold and are given back in the warm. */
  function lowsOf(season: number, liters: number, times: number): [number, number] {
    let frozen = 0;
    let mix = 0;
    let air = Number.POSITIVE_INFINITY;
    let warmest = Number.POSITIVE_INFINITY;
    const mean = (at: number) => ((years.tminC[at] as number) + (years.tmaxC[at] as number)) / 2;
    // October 1 to April 30: days 69 to 280 from July 24.
    for (let day = 69; day <= 280; day += 1) {
      const at = season * 365 + day;
      air = Math.min(air, years.tminC[at] as number);
      warmest = Math.min(warmest, mean(at));
      frozen = Math.max(0, frozen - mean(at));
      if (frozen < freezeThroughDays(liters) * times || mean(at) >= 0) continue;
      const before = day === 69 ? 0 : mean(at - 1);
      mix = Math.min(mix, liters >= 12.5 ? (mean(at) + before) / 2 : mean(at));
    }
    return [air, warmest > 0 ? warmest : mix];
  }

  it('are those of three hundred winters, October to April', () => {
    const air = Float64Array.from({ length: 300 }, (_, season) => lowsOf(season, 3, 1)[0]).sort();
    expect([...sortedC]).toEqual([...air]);
  });

  it('are in the mix of each pot those of freezing through by hand, and with twice the time when insulated', () => {
    expect(pots.map(({ container }) => container)).toEqual(['#1', '#3', '#5', '#15']);
    for (const { container, liters, lowC, insulatedLowC } of pots) {
      expect(liters).toBe(classLiters(containerClasses.find(({ name }) => name === container)!));
      const low = (times: number) =>
        sortedQuantile(
          Float64Array.from({ length: 300 }, (_, season) => lowsOf(season, liters, times)[1]).sort(),
          0.1,
        );
      expect([lowC, insulatedLowC]).toEqual([low(1), low(2)]);
    }
  });

  it('freeze a #1 pot through in 24 hours at -5 C, and larger ones by the 0.34th power of their liters', () => {
    expect(freezeThroughDays(3.3)).toBeCloseTo(5, 12);
    expect(freezeThroughDays(33)).toBeCloseTo(5 * 10 ** 0.34, 9);
  });

  it('of a winter without frost are its coldest mean', () => {
    const warm: WeatherYears = {
      lat: 30,
      firstDoy: 205,
      count: 2,
      tminC: new Float32Array(730).fill(4),
      tmaxC: new Float32Array(730).fill(12),
      spreadEstimated: false,
    };
    expect(winterLows(warm).pots[0]).toMatchObject({ lowC: 8, insulatedLowC: 8 });
    warm.tminC.fill(2, 100, 101);
    warm.tmaxC.fill(6, 100, 101);
    warm.tminC.fill(2, 465, 466);
    warm.tmaxC.fill(6, 465, 466);
    expect(winterLows(warm)).toMatchObject({ pots: [{ lowC: 4 }, {}, {}, {}] });
    expect([...winterLows(warm).sortedC]).toEqual([2, 2]);
  });
});

describe('the year of a parcel', () => {
  const years = weatherYears(evidenceFigures('johnson'), 60);

  it('has the usual mean of each day', () => {
    const { meanC } = arrivalYear(years, neverFreezes);
    for (const doy of [1, 100, 204, 205, 365]) {
      let sum = 0;
      for (let year = 0; year < 60; year += 1) {
        const at = year * 365 + ((doy - 205 + 365) % 365);
        sum += ((years.tminC[at] as number) + (years.tmaxC[at] as number)) / 2;
      }
      expect(meanC[doy - 1]).toBeCloseTo(sum / 60, 4);
    }
  });

  /** Two alike years from July 24: warm but for so many days from November 1 (index 100) on, [low, high] each. */
  function coolFrom(
    days: number,
    low: number,
    high: number,
    after: [number, number] = [12, 20],
  ): WeatherYears {
    const tminC = new Float32Array(730).fill(12);
    const tmaxC = new Float32Array(730).fill(20);
    for (const start of [0, 365]) {
      tminC.fill(low, start + 100, start + 100 + days);
      tmaxC.fill(high, start + 100, start + 100 + days);
      tminC.fill(after[0], start + 100 + days, start + 365);
      tmaxC.fill(after[1], start + 100 + days, start + 365);
    }
    return { lat: 40, firstDoy: 205, count: 2, tminC, tmaxC, spreadEstimated: false };
  }

  it('has trees asleep from two weeks before they have their chill until it is 15 C', () => {
    // A whole day between 0 and 7.2 C gives 24 hours: 200 on the ninth day, 300 on the thirteenth. Index 100 is day 305.
    const { asleep } = arrivalYear(coolFrom(60, 1, 7), neverFreezes);
    expect(chillHoursOfDay(1, 7)).toBe(24);
    expect(asleep['in-pot']).toEqual({ fromDoy: 305 + 8 - 14, toDoy: 364 });
    expect(asleep['bare-root']).toEqual({ fromDoy: 305 + 12 - 14, toDoy: 364 });
  });

  it('counts no chill on days of 10 C or more, and keeps them asleep until the next midsummer where it never gets warm', () => {
    // Days of 0 to 20 C have a mean of 10 C: some hours of chill, and none that count.
    expect(arrivalYear(coolFrom(90, 0, 20), neverFreezes).asleep).toEqual({
      'in-pot': null,
      'bare-root': null,
    });
    expect(arrivalYear(coolFrom(90, 0, 19.9), neverFreezes).asleep['in-pot']).not.toBeNull();
    const cold = arrivalYear(coolFrom(60, 1, 7, [10, 19]), neverFreezes).asleep['in-pot'];
    expect(cold).toEqual({ fromDoy: 299, toDoy: 205 });
    const warming = arrivalYear(coolFrom(60, 1, 7, [10, 20]), neverFreezes).asleep['in-pot'];
    expect(warming).toEqual({ fromDoy: 299, toDoy: 364 });
  });
});

describe('waits', () => {
  const season = (passing: readonly number[], seasons = 10) => {
    const days = new Uint8Array(365 * seasons);
    for (let year = 0; year < seasons; year += 1) for (const at of passing) days[year * 365 + at] = 1;
    return days;
  };
  const always = season(Array.from({ length: 365 }, (_, i) => i));

  it('run from sending day to sending day until one passes', () => {
    // Days 10 and 24 alone pass; parcels leave on one weekday.
    const waits = tripWaits(season([10, 24]), always, [1]).get(1)!;
    expect([3, 10, 17, 24].map(at => waits.middle[at])).toEqual([7, 0, 7, 0]);
    // With a second sending day three days on, it too is looked at.
    const two = tripWaits(season([13]), always, [1, 4]);
    expect(two.get(1)!.middle[10]).toBe(3);
    expect(two.get(4)!.middle[6]).toBe(7);
    expect(two.get(4)!.middle[13]).toBe(0);
  });

  it('are the middle year and nine years of ten', () => {
    const home = new Uint8Array(365 * 10);
    // Day 7 passes in five years of ten, day 14 in nine, day 21 in all.
    for (let year = 0; year < 10; year += 1) {
      if (year < 5) home[year * 365 + 7] = 1;
      if (year < 9) home[year * 365 + 14] = 1;
      home[year * 365 + 21] = 1;
    }
    const waits = tripWaits(home, always, [1]).get(1)!;
    expect([waits.middle[0], waits.late[0]]).toEqual([7, 14]);
    for (const year of [4, 8]) home.fill(0, year * 365, year * 365 + 20);
    const longer = tripWaits(home, always, [1]).get(1)!;
    expect([longer.middle[0], longer.late[0]]).toEqual([14, 21]);
  });

  it('beyond 120 days are told as 120', () => {
    const waits = tripWaits(season([130]), always, [1]).get(1)!;
    expect([waits.middle[4], waits.middle[11], waits.late[11]]).toEqual([120, 119, 119]);
  });

  it('are counted in 200 years at most, from January 1 on', () => {
    const limits = { coldestC: -7, hottestC: 35 };
    expect(passingDays(weatherYears(evidenceFigures('johnson'), 40), limits, 3)).toHaveLength(39 * 365);
    expect(passingDays(weatherYears(evidenceFigures('johnson'), 300), limits, 3)).toHaveLength(200 * 365);
  });
});

describe('a head start', () => {
  const figures = evidenceFigures('johnson');
  const years = weatherYears(figures);
  const climate = climateSummary(figures, years);
  const shares = (over: Partial<typeof fig>) => {
    const species = { ...fig, ...over };
    const starts = heatStarts(years, [species], climate.chill.answer);
    const outlook = placeOutlook({ id: 'x', name: 'X', figures, years, climate, heatStarts: starts }, [
      species,
    ]);
    return outlook.species.get('fig')!.crops.main.get('late')!;
  };

  it('is four weeks at 18 C above the base: at a base of 18 C it is worth nothing', () => {
    const heat = (value: number) => ({ main: { late: figure(value) }, breba: {} });
    const gained = (base: number, need: number) => {
      const { outdoors, headStart } = shares({
        heatBaseC: figure(base),
        heatNeed: heat(need),
        budbreakHeat: figure(0),
      });
      return outdoors.dates!.p50 - headStart.dates!.p50;
    };
    expect(gained(8, 1700)).toBeGreaterThanOrEqual(10);
    expect(gained(18, 250)).toBeLessThanOrEqual(1);
    expect(gained(13, 900)).toBeGreaterThan(gained(18, 250));
  });
});

it('shifts the coldest nights to the mean that is published, and keeps the rest of their spread', () => {
  const figures = evidenceFigures('johnson');
  const years = weatherYears(figures);
  const climate = climateSummary(figures, years);
  const starts = heatStarts(years, [fig], climate.chill.answer);
  const published = { ...climate.annualMinC, answer: { ...climate.annualMinC.answer, mean: -30 } };
  const { lowsC } = placeOutlook(
    {
      id: 'x',
      name: 'X',
      figures,
      years,
      climate: { ...climate, annualMinC: published },
      heatStarts: starts,
    },
    [fig],
  );
  const { sortedC } = winterLows(years);
  expect(lowsC.reduce((sum, low) => sum + low, 0) / lowsC.length).toBeCloseTo(-30, 9);
  expect((lowsC[200] as number) - (lowsC[0] as number)).toBeCloseTo(
    (sortedC[200] as number) - (sortedC[0] as number),
    9,
  );
});
