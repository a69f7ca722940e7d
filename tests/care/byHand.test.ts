/** What is read off hundreds of seasons, looked for again in each season without any shortcut. */
import { describe, expect, it } from 'vitest';
import { careFigures } from '../../src/core/care/careFigures.ts';
import { careYear } from '../../src/core/care/careYear.ts';
import { freezeThroughHours, mixFollower } from '../../src/core/care/potFreeze.ts';
import { monthDayOfSeason } from '../../src/core/care/seasonClock.ts';
import { NEVER, watchSeasons } from '../../src/core/care/seasonWatch.ts';
import { sineDegreeDays } from '../../src/core/climate/degreeDays.ts';
import { hargreavesEtoMm } from '../../src/core/climate/evapotranspiration.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { chillHoursOfDay } from '../../src/core/phenology/dormancy.ts';
import { puttingAway, ripenesses } from '../../src/core/phenology/puttingAway.ts';
import { fahrenheitToCelsius } from '../../src/core/units.ts';
import { fig, figure } from '../match/places.ts';
import { realClimate, realSpecies, realYear } from './realPlaces.ts';

describe('seasons watched', () => {
  const years = weatherYears(evidenceFigures('johnson'), 260);
  const heatFrom = 220;
  const found = watchSeasons(years, fig, 11, heatFrom);
  const low = (season: number, at: number) => years.tminC[season * 365 + at] as number;
  const high = (season: number, at: number) => years.tmaxC[season * 365 + at] as number;
  const mean = (season: number, at: number) => (low(season, at) + high(season, at)) / 2;
  const days = Array.from({ length: 365 }, (_, at) => at);
  const eachSeason = (of: (season: number) => number | undefined) =>
    Array.from({ length: 250 }, (_, season) => of(season) ?? NEVER);

  it('have the first and last nights at or below a limit', () => {
    const nights = (limit: number) => ({
      first: eachSeason(season => days.find(at => low(season, at) <= limit)),
      last: eachSeason(season => days.findLast(at => low(season, at) <= limit)),
    });
    const told = ({ first, last }: typeof found.young) => ({ first: [...first], last: [...last] });
    expect(told(found.young)).toEqual(nights(fig.dormantFirstWinterC.value));
    expect(told(found.established)).toEqual(nights(fig.dormantEstablishedC.value));
    for (const name of ripenesses) {
      const { meetsF, beforeF } = puttingAway[name];
      expect([...found.nights[name].meets]).toEqual(nights(fahrenheitToCelsius(meetsF)).first);
      expect([...found.nights[name].before]).toEqual(nights(fahrenheitToCelsius(beforeF)).first);
    }
  });

  const falls = eachSeason(season =>
    days.find(at => {
      if (low(season, at) <= -3.3) return true;
      if (at < 13) return false;
      let sum = 0;
      for (let back = 0; back < 14; back += 1) sum += mean(season, at - back);
      return sum / 14 < 10;
    }),
  );

  it('have leaf fall with a night of its limit or two weeks that are cool on average', () => {
    expect([...found.leafFall]).toEqual(falls);
  });

  it('have a tree dormant after 200 hours of chill since leaf fall, in a week below 10 C', () => {
    const asleep = eachSeason(season => {
      const start = (falls[season] as number) + 1;
      let hours = 0;
      return days.slice(start).find(at => {
        hours += chillHoursOfDay(low(season, at), high(season, at));
        const week = days.slice(Math.max(start, at - 6), at + 1);
        const weekMean = week.reduce((sum, one) => sum + mean(season, one), 0) / week.length;
        return hours >= 200 && weekMean < 10;
      });
    });
    expect([...found.dormant]).toEqual(asleep);
  });

  it('have budbreak on the day that completes the heat', () => {
    const buds = eachSeason(season => {
      let heat = 0;
      return days.slice(heatFrom).find(at => {
        heat += sineDegreeDays(low(season, at), high(season, at), 8, 36);
        return heat >= 164;
      });
    });
    expect([...found.budbreak]).toEqual(buds);
  });

  it('have the mix of a pot at its limit on the days of the follower, started in summer', () => {
    const at = (season: number) => {
      const mixOf = mixFollower(11);
      return days.filter(one => mixOf(mean(season, one)) <= fig.rootInjuryC.value);
    };
    expect([...found.pot.first]).toEqual(eachSeason(season => at(season)[0]));
    expect([...found.pot.last]).toEqual(eachSeason(season => at(season).at(-1)));
  });
});

describe('the year of a tree', () => {
  const climate = realClimate('boston-ma');
  const year = realYear('boston-ma', 'fig');

  it('has quantiles that so many seasons have reached', () => {
    const { years } = climate;
    const lows = Array.from({ length: 250 }, (_, season) => {
      const from = season * 365;
      const at = years.tminC.subarray(from, from + 365).findIndex(low => low <= fahrenheitToCelsius(27));
      return at < 0 ? 365 : at;
    }).sort((a, b) => a - b);
    expect(year.nights.soft.before).toEqual({ p10: lows[24], p50: lows[124], p90: lows[224] });
  });

  it('has its coldest and hottest month of 31 days in the middle, and its highest usual high', () => {
    const month = (at: number) =>
      Array.from({ length: 31 }, (_, i) => year.meanC[(at + i - 15 + 365) % 365] as number).reduce(
        (sum, meanC) => sum + meanC,
        0,
      );
    for (let at = 0; at < 365; at += 1) {
      expect(month(at)).toBeGreaterThanOrEqual(month(year.coldestDay) - 1e-9);
      expect(month(at)).toBeLessThanOrEqual(month(year.hottestDay) + 1e-9);
    }
    expect(year.hottestHighC).toBe(Math.max(...climate.summary.ribbon.highC));
  });

  it('runs from July 24: means, evapotranspiration and freezes by day of the season', () => {
    const { lowC, highC } = climate.summary.ribbon;
    for (const at of [0, 100, 160, 161, 300, 364]) {
      const doy = ((204 + at) % 365) + 1;
      expect(year.meanC[at]).toBeCloseTo((lowC[doy - 1]! + highC[doy - 1]!) / 2, 9);
      expect(year.etoMm[at]).toBeCloseTo(
        hargreavesEtoMm(climate.years.lat, doy, lowC[doy - 1]!, highC[doy - 1]!),
        9,
      );
    }
    const { last } = climate.summary.freeze['32F'].answer;
    expect(monthDayOfSeason(year.lastFreeze['32F'].p90!, year.firstDoy)).toBe(last.p90);
    expect(year.winterLowC).toBe(climate.summary.annualMinC.answer.p10);
  });

  it('is evergreen where leaves do not fall and the coldest weeks are mild enough', () => {
    const never = { ...realSpecies('fig'), leafFallNightC: figure(-40), leafFallMeanC: figure(-40) };
    const cold = careYear(climate, never, 11);
    expect([cold.leafFall.p50, cold.evergreen]).toEqual([null, false]);
    const miami = careYear(realClimate('miami-fl'), never, 11);
    expect(miami.meanC[miami.coldestDay]).toBeGreaterThan(careFigures.evergreenAbove.low);
    expect(miami.evergreen).toBe(true);
  });
});

describe('a pot that freezes through', () => {
  // Latent heat 334 kJ/kg, 40 % water, a film of 10 W/m2 K: a pot of V liters is (4 V / 1000 pi)^(1/3) m wide, and a fifth of that long.
  const degreeHours = (liters: number, resistance = 0) =>
    (334_000 * 0.4 * 1000 * (((4 * liters) / 1000 / Math.PI) ** (1 / 3) / 5) * (0.1 + resistance)) / 3600;

  it.each([3.3, 11.4, 53])('of %f liters takes its latent heat through its film', liters => {
    expect(freezeThroughHours(liters, -5)).toBeCloseTo(degreeHours(liters) / 5, 9);
    expect(freezeThroughHours(liters, -10, 0.1)).toBeCloseTo((2 * degreeHours(liters)) / 10, 9);
    expect(freezeThroughHours(liters, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('stays at 0 C as long as some of it is ice, then follows the day, or two days when it is large', () => {
    // A hair colder than needed: sums of binary fractions need not meet a bound.
    const need = degreeHours(3.3) + 1e-6;
    const mixOf = mixFollower(3.3);
    const first = mixOf(-need / 24 + 0.01);
    expect([mixOf(8) > 0, first]).toEqual([true, 0]);
    const small = mixFollower(3.3);
    expect(small(-need / 24)).toBeCloseTo(-need / 24, 9);
    expect(small(0.01)).toBe(0);
    expect(small(20)).toBe(20);
    const large = mixFollower(53);
    const cold = -(degreeHours(53) + 1e-6) / 24;
    expect(large(cold)).toBeCloseTo(cold, 9);
    expect(large(cold - 4)).toBeCloseTo(cold - 2, 9);
    // No warmer than 0 C while the mean of two days is, and no colder than the air before it freezes.
    expect(mixFollower(12)(5)).toBe(5);
    const twelve = mixFollower(12);
    twelve(cold);
    expect(twelve(cold - 4)).toBeCloseTo(cold - 4, 9);
    const above = mixFollower(12.1);
    above(cold);
    expect(above(cold - 4)).toBeCloseTo(cold - 2, 9);
  });
});
