/** Every calendar comes to an end, whatever the climate: counted in looks at the year of the species, not in time. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { careCalendar } from '../../src/core/care/calendar.ts';
import type { CareYear } from '../../src/core/care/careYear.ts';
import { guideCalendar } from '../../src/core/care/guideCalendar.ts';
import { addDays, day, daysBetween } from '../../src/core/days.ts';
import { forms } from '../../src/core/records/common.ts';
import { guideKinds } from '../../src/core/records/guide.ts';
import { randomFigures, yearOfFigures } from './randomClimates.ts';
import { realSpecies, speciesIds } from './realPlaces.ts';

/** A calendar of the shipped places takes about a thousand. */
const MOST_STEPS = 20_000;

/** The year behind a counter of what is read from it: a loop that looks at the year without end is stopped by it. */
function counted(year: CareYear): { year: CareYear; steps: () => number } {
  let steps = 0;
  const count = <T extends object>(target: T): T =>
    new Proxy(target, {
      get(from, key) {
        steps += 1;
        if (steps > MOST_STEPS) throw new Error(`more than ${MOST_STEPS} steps`);
        const value = Reflect.get(from, key) as unknown;
        return Array.isArray(value) ? count(value) : value;
      },
    });
  return { year: count(year), steps: () => steps };
}

/** Days between the safe day and the early freeze; null where there is no such season. */
function seasonBetween({ lastFreeze, firstFreeze }: CareYear): number | null {
  const [safe, freeze] = [lastFreeze['32F'].p90, firstFreeze['32F'].p10];
  return safe === null || freeze === null ? null : freeze + 365 - safe;
}

const drawn = fc.record({
  figures: randomFigures,
  speciesId: fc.constantFrom(...speciesIds),
  potLiters: fc.constantFrom(3, 11, 53),
});
const arrivals = ['2026-02-03', '2026-05-20', '2026-08-14', '2026-11-25'] as const;

describe('every calendar of any climate', () => {
  it('is done within a bound of steps', () => {
    const seasons: number[] = [];
    fc.assert(
      fc.property(drawn, ({ figures, speciesId, potLiters }) => {
        const species = realSpecies(speciesId);
        const year = yearOfFigures(figures, species, potLiters);
        const season = seasonBetween(year);
        if (season !== null) seasons.push(season);
        for (const arrives of arrivals) {
          for (const form of forms) {
            for (const kept of ['pot', 'ground'] as const) {
              const plant = { species, form, kept, potLiters, arrives: day(arrives) };
              for (const stage of ['first-winter', 'established'] as const) {
                const { tasks, from, to } = careCalendar(counted(year).year, { ...plant, stage });
                expect(tasks.length).toBeGreaterThan(0);
                const outside = tasks.filter(
                  ({ range }) => range.from < from || range.to > to || range.from > range.to,
                );
                expect(outside).toEqual([]);
              }
            }
          }
        }
        for (const kind of guideKinds) guideCalendar(kind, counted(year).year, day('2026-11-25'));
      }),
      { numRuns: 60, seed: 20261130 },
    );
    // Places such as Butte, McCall, Craig and Ushuaia have fewer than eight weeks.
    expect(seasons.filter(days => days < 56).length).toBeGreaterThan(2);
    expect(seasons.filter(days => days >= 56).length).toBeGreaterThan(15);
  });

  it('plants within weeks of the safe day where no season is long enough to root', () => {
    const species = realSpecies('jujube');
    const base = yearOfFigures(
      {
        lat: 46,
        tminC: [-12, -10, -6, -2, 1, 4, 6, 5, 1, -3, -8, -12],
        tmaxC: [-2, 0, 4, 9, 15, 20, 26, 25, 19, 12, 4, -2],
        rainMm: null,
        dewPointC: null,
        sdTminC: new Array<number>(12).fill(4),
        sdTmaxC: new Array<number>(12).fill(5),
        sdAbout: 'curve',
        lag1: null,
        published: { freeze: new Map(), season: null, winterZone: null, annualMin: null },
      },
      species,
      11,
    );
    expect(seasonBetween(base)).toBeLessThan(56);
    const { tasks } = careCalendar(counted(base).year, {
      species,
      form: 'leafed-pot',
      kept: 'ground',
      stage: 'first-winter',
      potLiters: 11,
      arrives: day('2026-05-01'),
    });
    const planting = tasks.find(({ name }) => name === 'plant-out')!;
    const safe = addDays(day('2025-07-24'), base.lastFreeze['32F'].p90!);
    expect(daysBetween(safe, planting.range.from)).toBeGreaterThanOrEqual(0);
    expect(daysBetween(safe, planting.range.to)).toBeLessThanOrEqual(14);
    expect(planting.trigger).toMatch(/fewer than eight weeks/);
  });
});
