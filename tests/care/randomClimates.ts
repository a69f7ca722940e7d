/** Climates that need not exist: any latitude, any mean, swing and spread that the reading of places would let through. */

import fc from 'fast-check';
import { type CareYear, careYear } from '../../src/core/care/careYear.ts';
import { type ClimateFigures, nothingPublished } from '../../src/core/climate/figures.ts';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import type { Species } from '../../src/core/records/species.ts';

/** Few seasons: the dates are rough, which is all the same to a test of what follows from them. */
const SEASONS = 40;

export const randomFigures: fc.Arbitrary<ClimateFigures> = fc
  .record({
    lat: fc.integer({ min: -60, max: 65 }),
    /** Mean of the year and half the difference between the warmest and the coldest month, C. */
    mean: fc.integer({ min: -6, max: 29 }),
    swing: fc.integer({ min: 0, max: 22 }),
    range: fc.integer({ min: 4, max: 20 }),
    rain: fc.integer({ min: 0, max: 200 }),
    spread: fc.integer({ min: 1, max: 7 }),
  })
  .map(({ lat, mean, swing, range, rain, spread }) => {
    const sign = lat < 0 ? 1 : -1;
    const monthly = Array.from(
      { length: 12 },
      (_, month) => mean + sign * swing * Math.cos((2 * Math.PI * (month - 0.5)) / 12),
    );
    return {
      lat,
      tminC: monthly.map(value => value - range / 2),
      tmaxC: monthly.map(value => value + range / 2),
      rainMm: new Array<number>(12).fill(rain),
      dewPointC: null,
      sdTminC: new Array<number>(12).fill(spread),
      sdTmaxC: new Array<number>(12).fill(spread),
      sdAbout: 'curve' as const,
      lag1: null,
      published: nothingPublished,
    };
  });

export function yearOfFigures(figures: ClimateFigures, species: Species, potLiters: number): CareYear {
  const years = weatherYears(figures, SEASONS);
  const climate = { id: 'random', name: 'Anywhere', years, summary: climateSummary(figures, years) };
  return careYear(climate, species, potLiters);
}
