/** What must hold for every calendar: any shipped place, species, form, day of arrival, pot or ground. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CALENDAR_DAYS, type CareTask, careCalendar } from '../../src/core/care/calendar.ts';
import { type TaskName, taskNames } from '../../src/core/care/guideVocabulary.ts';
import type { PlantInCare } from '../../src/core/care/plantInCare.ts';
import { dayOfSeason, seasonDayOf } from '../../src/core/care/seasonClock.ts';
import { addDays, day, dayOfYear, daysBetween, doyFromMonthDay } from '../../src/core/days.ts';
import { forms } from '../../src/core/records/common.ts';
import { realClimate, realSpecies, realYear, speciesIds } from './realPlaces.ts';

const placeIds = [
  'minneapolis-mn',
  'caribou-me',
  'asheville-nc',
  'mobile-al',
  'camborne-gb',
  'phoenix-az',
  'melbourne-au',
  'santiago-cl',
  'honolulu-hi',
  'seville-es',
  'denver-co',
  'canberra-au',
] as const;
/** Usual freezes hardly ever, judged by the climate alone: 32 F in fewer than one year in ten. */
const frostFree = (id: string) => realClimate(id).summary.freeze['32F'].answer.none > 0.9;

const plants = fc.record({
  placeId: fc.constantFrom(...placeIds),
  speciesId: fc.constantFrom(...speciesIds),
  form: fc.constantFrom(...forms),
  stage: fc.constantFrom('first-winter' as const, 'first-winter' as const, 'established' as const),
  kept: fc.constantFrom('pot' as const, 'ground' as const),
  potLiters: fc.constantFrom(3, 11, 53),
  arrives: fc.integer({ min: 0, max: 730 }).map(count => addDays(day('2026-01-01'), count)),
});
type Drawn = typeof plants extends fc.Arbitrary<infer T> ? T : never;

function calendarOf({ placeId, speciesId, ...rest }: Drawn) {
  const plant: PlantInCare = { species: realSpecies(speciesId), ...rest };
  const year = realYear(placeId, speciesId, rest.potLiters);
  return { year, plant, ...careCalendar(year, plant) };
}

const runs = { numRuns: 1500, seed: 20261125 };
const named = (tasks: readonly CareTask[], name: TaskName) => tasks.filter(task => task.name === name);
const seasonOf = (task: CareTask) => task.id.slice(task.name.length + 1);
/** Both tasks of one season. */
function pairs(tasks: readonly CareTask[], first: TaskName, second: TaskName): [CareTask, CareTask][] {
  return named(tasks, first).flatMap(a =>
    named(tasks, second)
      .filter(b => seasonOf(a) === seasonOf(b))
      .map(b => [a, b] as [CareTask, CareTask]),
  );
}

/** The first may not start after the second starts. */
const inOrder: readonly [TaskName, TaskName][] = [
  ['unpack', 'soak-roots'],
  ['soak-roots', 'pot-up'],
  ['soak-roots', 'plant-dormant'],
  ['keep-wrapped', 'plant-dormant'],
  ['unpack', 'settle-in'],
  ['settle-in', 'plant-out'],
  ['plant-dormant', 'water-asleep'],
  ['plant-dormant', 'water-new'],
  ['water-new', 'water-first-summer'],
  ['water-first-summer', 'water-second-summer'],
  ['ready-for-store', 'move-in'],
  ['wake', 'water-waking'],
  ['wake', 'watch-buds'],
  ['watch-buds', 'harden'],
  ['feed', 'pot-on'],
  ['plant-out', 'water-new'],
  ['stop-feeding', 'leaf-fall'],
  ['ease-water', 'leaf-fall'],
  ['leaf-fall', 'move-in'],
  ['leaf-fall', 'protect'],
  ['leaf-fall', 'prune'],
  ['move-in', 'water-stored'],
  ['move-in', 'wake'],
  ['store-on-arrival', 'wake'],
  ['prune', 'wake'],
  ['wake', 'pot-on'],
  ['wake', 'harden'],
  ['harden', 'move-out'],
  ['move-out', 'feed'],
  ['mulch', 'protect'],
  ['protect', 'inspect-protection'],
  ['inspect-protection', 'uncover'],
  ['protect', 'uncover'],
];
/** The first must be over before the second begins. */
const apart: readonly [TaskName, TaskName][] = [
  ['keep-wrapped', 'soak-roots'],
  ['move-in', 'water-stored'],
  ['water-stored', 'wake'],
  ['water-asleep', 'water-new'],
  ['water-new', 'water-first-summer'],
  ['prune', 'wake'],
  ['harden', 'move-out'],
  ['protect', 'inspect-protection'],
  ['inspect-protection', 'uncover'],
];

describe('every care calendar', () => {
  it('covers at least 18 months and stays within its days', () => {
    expect(CALENDAR_DAYS).toBeGreaterThanOrEqual(548);
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks, from, to, plant } = calendarOf(drawn);
        expect(from).toBe(plant.arrives);
        expect(daysBetween(from, to)).toBe(CALENDAR_DAYS);
        expect(tasks.length).toBeGreaterThan(3);
        for (const { range } of tasks) {
          expect(range.from <= range.to && range.from >= from && range.to <= to).toBe(true);
        }
      }),
      runs,
    );
  });

  it('has ids that are unique, in order of days, with a trigger, a reason and its standing', () => {
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks } = calendarOf(drawn);
        expect(new Set(tasks.map(({ id }) => id)).size).toBe(tasks.length);
        const days = tasks.map(({ range }) => range.from);
        expect(days).toEqual([...days].sort());
        for (const task of tasks) {
          expect(taskNames).toContain(task.name);
          expect(task.trigger).toMatch(/^[\dA-Z].*[.!]$/s);
          expect(task.trigger).not.toMatch(/NaN|undefined|null|Infinity/);
          expect(task.because.length).toBeGreaterThan(0);
          for (const { standing, source } of task.because) {
            if (standing === 'published') expect(source).toBeTruthy();
          }
        }
      }),
      runs,
    );
  });

  it('puts causes before what follows from them', () => {
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks } = calendarOf(drawn);
        for (const [first, second] of inOrder) {
          for (const [a, b] of pairs(tasks, first, second)) {
            expect(a.range.from <= b.range.from, `${a.id} ${a.range.from} / ${b.id} ${b.range.from}`).toBe(
              true,
            );
          }
        }
        for (const [first, second] of apart) {
          for (const [a, b] of pairs(tasks, first, second)) {
            expect(a.range.to < b.range.from, `${a.id} ${a.range.to} / ${b.id} ${b.range.from}`).toBe(true);
          }
        }
      }),
      runs,
    );
  });

  it('plants nothing in leaf before the safe day, judged by the freeze dates of the place', () => {
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks } = calendarOf(drawn);
        const { first, last } = realClimate(drawn.placeId).summary.freeze['32F'].answer;
        if (last.p90 === null || first.p10 === null) return;
        const [safe, freeze] = [last.p90, first.p10].map(text => doyFromMonthDay(text) as number) as [
          number,
          number,
        ];
        for (const { range } of [...named(tasks, 'plant-out'), ...named(tasks, 'move-out')]) {
          const doy = dayOfYear(range.from);
          const growing = safe < freeze ? doy >= safe && doy < freeze : doy >= safe || doy < freeze;
          expect(growing, `${range.from}; safe ${last.p90}, freeze ${first.p10}`).toBe(true);
        }
      }),
      runs,
    );
  });

  it('plants no leafless tree in frozen months', () => {
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks, year } = calendarOf(drawn);
        for (const { range } of named(tasks, 'plant-dormant')) {
          for (const at of [range.from, range.to]) {
            expect(year.meanC[seasonDayOf(at, year.firstDoy).at] as number).toBeGreaterThan(2);
          }
        }
      }),
      runs,
    );
  });

  it('schedules no frost work where it does not freeze, and no rest from warmth where it does', () => {
    const frostWork: readonly TaskName[] = [
      'move-in',
      'store-on-arrival',
      'hold-late-leaves',
      'shelter-nights',
      'protect',
      'uncover',
      'mulch',
      'cover-new-leaves',
      'harden',
      'wake',
      'water-stored',
    ];
    let seen = 0;
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks } = calendarOf(drawn);
        const names = tasks.map(({ name }) => name);
        if (frostFree(drawn.placeId)) {
          seen += 1;
          expect(names.filter(name => frostWork.includes(name))).toEqual([]);
        } else if (realClimate(drawn.placeId).summary.freeze['28F'].answer.none < 0.1) {
          expect(names).not.toContain('rest');
        }
      }),
      runs,
    );
    expect(seen).toBeGreaterThan(50);
  });

  it('feeds nothing between the last feed and spring', () => {
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks } = calendarOf(drawn);
        for (const stop of named(tasks, 'stop-feeding')) {
          for (const feed of named(tasks, 'feed')) {
            const gap = daysBetween(stop.range.to, feed.range.to);
            expect(
              gap <= 0 || daysBetween(stop.range.to, feed.range.from) > 60,
              `${stop.id} ${feed.id}`,
            ).toBe(true);
          }
        }
      }),
      runs,
    );
  });

  it('hardens no leaves before the heat of a cool bright place can have opened any', () => {
    // Growing degree hours after Richardson and others 1974, and the smallest published need, 4,096 (HortScience 52(4):560, 2017).
    let hardened = 0;
    let straightOut = 0;
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks, year } = calendarOf(drawn);
        for (const [wake, out] of pairs(tasks, 'wake', 'move-out')) {
          const harden = named(tasks, 'harden').find(task => seasonOf(task) === seasonOf(wake));
          if (wake.range.from === drawn.arrives || out.range.from === drawn.arrives) continue;
          if (harden === undefined) {
            straightOut += 1;
            expect(out.trigger).toMatch(/need no hardening/);
            continue;
          }
          hardened += 1;
          let hours = 0;
          for (let at = wake.range.from; at < harden.range.from; at = addDays(at, 1)) {
            const outdoors = year.meanC[seasonDayOf(at, year.firstDoy).at] as number;
            hours += 24 * (Math.min(25, Math.max(10, outdoors)) - 4.5);
          }
          expect(hours, `${wake.range.from} ${harden.range.from}`).toBeGreaterThan(4096 - 24 * 20);
        }
      }),
      runs,
    );
    expect(straightOut).toBeGreaterThan(10);
    expect(hardened).toBeGreaterThan(10);
  });

  it('waters a tree in leaf, and a new tree through both its first summers, wherever it stands', () => {
    let summers = 0;
    fc.assert(
      fc.property(plants, drawn => {
        const { tasks, plant, year } = calendarOf(drawn);
        const planted = tasks.find(({ name }) => name === 'plant-out' || name === 'plant-dormant');
        if (plant.stage !== 'first-winter' || planted === undefined) return;
        const waters = tasks.filter(({ name }) =>
          ['water-asleep', 'water-new', 'water-first-summer', 'water-second-summer'].includes(name),
        );
        const end = addDays(plant.arrives, CALENDAR_DAYS);
        // Every hottest day in the ground of the time the calendar covers lies within one of them.
        for (let season = 2024; season < 2030; season += 1) {
          const hottest = dayOfSeason({ season, at: year.hottestDay }, year.firstDoy);
          if (hottest <= planted.range.to || hottest > end) continue;
          summers += 1;
          expect(
            waters.some(({ range }) => range.from <= hottest && range.to >= hottest),
            `${drawn.placeId} ${hottest} planted ${planted.range.from}`,
          ).toBe(true);
        }
      }),
      runs,
    );
    expect(summers).toBeGreaterThan(200);
  });

  it('runs the same half a year apart south of the equator', () => {
    // Leaf fall in the middle of the southern fall, hardening before the southern summer.
    const { tasks } = calendarOf({
      placeId: 'canberra-au',
      speciesId: 'fig',
      form: 'leafed-pot',
      stage: 'first-winter',
      kept: 'pot',
      potLiters: 11,
      arrives: day('2026-01-10'),
    });
    const fall = named(tasks, 'leaf-fall')[0] as CareTask;
    expect(fall.range.from >= '2026-03-15' && fall.range.from <= '2026-06-15').toBe(true);
    const stop = named(tasks, 'stop-feeding')[0] as CareTask;
    expect(stop.range.to < fall.range.from).toBe(true);
  });
});

describe('days of a season', () => {
  it('go to the calendar and back, over February 29 too', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2000, max: 2100 }),
        fc.integer({ min: 0, max: 364 }),
        fc.constantFrom(205, 24),
        (season, at, firstDoy) => {
          expect(seasonDayOf(dayOfSeason({ season, at }, firstDoy), firstDoy)).toEqual({ season, at });
        },
      ),
      { seed: 7 },
    );
  });
});
