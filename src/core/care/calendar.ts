/** The care calendar: dated tasks for one plant in one place, from the day it arrives. */

import { addDays, type Day, type DayRange, daysBetween, earlier, later } from '../days.ts';
import { type Ripeness, ripenessOf } from '../phenology/puttingAway.ts';
import type { Reason } from '../records/common.ts';
import { arrivalOf, arrivalWindows, skipsAutumn } from './arrival.ts';
import type { CareYear } from './careYear.ts';
import { type Caution, cautionsForTask } from './cautions.ts';
import { groundWindows } from './groundWindows.ts';
import { type TaskName, taskNames } from './guideVocabulary.ts';
import { plantedWater } from './plantedWater.ts';
import type { PlantInCare } from './plantInCare.ts';
import { type Planting, plantingOf } from './planting.ts';
import { potWindows } from './potWindows.ts';
import { protectionFigures, type WinterNumber, winterProtection } from './protection.ts';
import { dayOfSeason, seasonDayOf } from './seasonClock.ts';
import { taskTable } from './taskTable.ts';
import type { Window } from './window.ts';

export interface CareTask {
  /** Stable as long as plant and place stay the same: `move-in-2026`, by the year in which the season of the task started. */
  id: string;
  name: TaskName;
  title: string;
  range: DayRange;
  /** When and how, in words. */
  trigger: string;
  because: Reason[];
  tools: readonly string[];
  cautions: Caution[];
}

export interface CareCalendar {
  /** In order of their first day. */
  tasks: CareTask[];
  from: Day;
  to: Day;
  /** Where the tree will live, which may not be where it was meant to. */
  kept: 'pot' | 'ground';
  /** What the calendar takes for granted, and why. */
  because: Reason[];
}

/** A calendar runs this long, days: two winters for a tree that arrives in the fall. */
export const CALENDAR_DAYS = 560;

/** What arrival or planting leaves of a longer window is dropped when it is shorter than this, days. */
const SHORTEST_STUB_DAYS = 3;

/** A new tree is neither pruned, fed nor potted on before this, days. Standing: ours. */
const LEFT_ALONE_DAYS = 21;
const notWhenNew: readonly TaskName[] = ['prune', 'pot-on', 'feed', 'shade-trunk', 'stop-feeding'];
const autumnTasks: readonly TaskName[] = [
  'ease-water',
  'leaf-fall',
  'ready-for-store',
  'move-in',
  'stop-feeding',
  'rest',
];
const storedTasks: readonly TaskName[] = ['water-stored', 'inspect-stored'];
/** A tree that is kept awake through the winter neither wakes nor is pruned asleep. */
const wakingTasks: readonly TaskName[] = ['wake', 'water-waking', 'watch-buds'];
const growthTasks: readonly TaskName[] = ['water-growing', 'feed'];
/** Only where the cover went on. */
const coverTasks: readonly TaskName[] = ['inspect-protection', 'uncover'];

/** A tree that is planted within this many days is not potted on before, days. Standing: ours. */
const NOT_POTTED_BEFORE_PLANTING_DAYS = 150;

class CalendarMaker {
  readonly tasks: CareTask[] = [];
  readonly #year: CareYear;
  readonly #plant: PlantInCare;
  readonly from: Day;
  readonly to: Day;

  constructor(year: CareYear, plant: PlantInCare) {
    this.#year = year;
    this.#plant = plant;
    this.from = plant.arrives;
    this.to = addDays(plant.arrives, CALENDAR_DAYS);
  }

  dayAt(season: number, at: number): Day {
    return dayOfSeason({ season, at }, this.#year.firstDoy);
  }

  /** Sets a window of a season in the calendar, cut to the days between `notBefore` and `notAfter`. */
  add(season: number, window: Window, notBefore: Day = this.from, notAfter: Day = this.to): void {
    const range = {
      from: later(this.dayAt(season, window.from), later(notBefore, this.from)),
      to: earlier(this.dayAt(season, window.to), earlier(notAfter, this.to)),
    };
    const daysLeft = daysBetween(range.from, range.to) + 1;
    const isStub = daysLeft < SHORTEST_STUB_DAYS && window.to - window.from >= SHORTEST_STUB_DAYS;
    if (daysLeft < 1 || isStub) return;
    const { title, tools } = taskTable[window.name];
    const id = `${window.name}-${season}`;
    if (this.tasks.some(task => task.id === id)) return;
    this.tasks.push({
      id,
      name: window.name,
      title,
      range,
      trigger: window.trigger,
      because: window.because,
      tools,
      cautions: cautionsForTask(window.name, this.#plant.species),
    });
  }

  has(name: TaskName, season: number): boolean {
    return this.tasks.some(task => task.id === `${name}-${season}`);
  }

  inOrder(): CareTask[] {
    const order = (task: CareTask) => taskNames.indexOf(task.name);
    return this.tasks.sort((a, b) =>
      a.range.from === b.range.from ? order(a) - order(b) : a.range.from < b.range.from ? -1 : 1,
    );
  }
}

function winterAfter(planted: number, season: number, first: WinterNumber): WinterNumber {
  return Math.min(3, first + Math.max(0, season - planted)) as WinterNumber;
}

/** The calendar of a tree that stands where it is to stay, from a day on; in the ground for the first, second or a later winter there. */
export function standingCalendar(year: CareYear, plant: PlantInCare, winter: WinterNumber = 3): CareCalendar {
  const maker = new CalendarMaker(year, plant);
  const { season } = seasonDayOf(plant.arrives, year.firstDoy);
  const protection = winterProtection(plant.species, winter, year.winterLowC);
  const potOnly = plant.kept === 'ground' && protection.method === 'pot-only';
  const ripeness = ripenessIn(plant, plant.stage === 'first-winter');
  const windows = plant.kept === 'pot' ? potWindows(year, ripeness) : groundWindows(year, winter);
  for (let k = season - 1; k <= season + 2; k += 1) for (const window of windows) maker.add(k, window);
  return {
    tasks: maker.inOrder(),
    from: maker.from,
    to: maker.to,
    kept: plant.kept,
    because: potOnly
      ? [
          ...protection.because,
          {
            text: 'A tree in the ground here is expected to die back to the roots in hard winters, whatever the cover.',
            standing: 'modeled',
          },
        ]
      : plant.kept === 'ground'
        ? protection.because
        : [],
  };
}

/** How ripe a tree in a pot is in the winter of a season; the first one it is with its buyer counts as its first. */
function ripenessIn(plant: PlantInCare, firstWinter: boolean): Ripeness {
  const { species, potLiters } = plant;
  return ripenessOf({ species, potLiters, firstWinter, wood: null });
}

function groundReasons(year: CareYear, planting: Planting): Reason[] {
  if (planting.potOnly !== null) {
    return [
      ...planting.potOnly,
      {
        text: 'The margin is too wide for any cover, so the tree stays in a pot.',
        standing: 'ours',
        source: 'Our working figures for covers.',
      },
    ];
  }
  const { method, because } = winterProtection(year.species, planting.firstWinterCounts, year.winterLowC);
  const { name } = protectionFigures.find(figure => figure.method === method)!;
  return [
    ...because,
    {
      text: `In its first winter in the ground: ${name}.`,
      standing: 'ours',
      source: 'Our working figures for covers.',
    },
  ];
}

function newCalendar(year: CareYear, plant: PlantInCare): CareCalendar {
  const maker = new CalendarMaker(year, plant);
  const { season, at } = seasonDayOf(plant.arrives, year.firstDoy);
  const arrival = arrivalOf(year, plant, at);
  const asleep =
    arrival === 'stored' || arrival === 'stands-out' || (arrival === 'wakes' && plant.form !== 'leafed-pot');
  const planting = plant.kept === 'ground' ? plantingOf(year, plant, at, asleep) : null;
  const window = planting?.window ?? null;
  const whileAsleep = window?.name === 'plant-dormant' ? window.from : null;
  for (const first of arrivalWindows(year, plant, at, arrival, whileAsleep)) {
    // A tree that is planted leaves the store on that day.
    const until = window === null ? maker.to : later(maker.from, maker.dayAt(season, window.from));
    maker.add(season, first, maker.from, storedTasks.includes(first.name) ? until : maker.to);
  }
  const plantedOn = window === null ? null : maker.dayAt(season, window.from);
  const plantedBy = window === null ? null : maker.dayAt(season, window.to);
  if (window !== null) {
    maker.add(season, window);
    for (const water of plantedWater(year, plant, window, window.name === 'plant-dormant')) {
      maker.add(season, water);
    }
  }
  const settled = addDays(plant.arrives, LEFT_ALONE_DAYS);
  const skipAutumn = skipsAutumn(arrival, year, at);
  const staysAwake = arrival === 'late-in-leaf' && skipAutumn;
  const wrapped = maker.has('keep-wrapped', season);
  const skips = (k: number, name: TaskName) =>
    (k < season && (asleep || arrival === 'late-in-leaf') && growthTasks.includes(name)) ||
    (k === season && skipAutumn && [...autumnTasks, ...storedTasks, 'prune'].includes(name)) ||
    (k === season && staysAwake && wakingTasks.includes(name));
  for (let k = season - 1; k <= season + 2; k += 1) {
    for (const inPot of wrapped ? [] : potWindows(year, ripenessIn(plant, k <= season))) {
      if (skips(k, inPot.name)) continue;
      const begun = maker.dayAt(k, inPot.from) < plant.arrives;
      if (begun && plant.form === 'leafed-pot' && wakingTasks.includes(inPot.name)) continue;
      const notBefore = notWhenNew.includes(inPot.name) ? settled : maker.from;
      if (plantedOn === null) {
        maker.add(k, inPot, notBefore);
        continue;
      }
      const starts = maker.dayAt(k, inPot.from);
      const pottedForNothing =
        inPot.name === 'pot-on' && daysBetween(starts, plantedOn) < NOT_POTTED_BEFORE_PLANTING_DAYS;
      if (starts < plantedOn && !pottedForNothing) maker.add(k, inPot, notBefore, addDays(plantedOn, -1));
    }
    if (plantedBy === null || planting === null) continue;
    const { season: plantedIn, at: plantedAt } = seasonDayOf(plantedBy, year.firstDoy);
    // Planted after midwinter, the next season's winter is its first in the ground.
    const firstSeason = plantedAt > year.coldestDay ? plantedIn + 1 : plantedIn;
    for (const inGround of groundWindows(year, winterAfter(firstSeason, k, planting.firstWinterCounts))) {
      if (skips(k, inGround.name) || inGround.name === 'water-growing') continue;
      if (coverTasks.includes(inGround.name) && !maker.has('protect', k)) continue;
      const notBefore = notWhenNew.includes(inGround.name) ? addDays(plantedBy, LEFT_ALONE_DAYS) : plantedBy;
      maker.add(k, inGround, later(notBefore, maker.from));
    }
  }
  return {
    tasks: maker.inOrder(),
    from: maker.from,
    to: maker.to,
    kept: plant.kept === 'ground' && planting?.potOnly === null ? 'ground' : 'pot',
    because: planting === null ? [] : groundReasons(year, planting),
  };
}

/** Every task for a plant in a place over the 560 days from its arrival, each with its trigger, reasons, tools and cautions. */
export function careCalendar(year: CareYear, plant: PlantInCare): CareCalendar {
  return plant.stage === 'established' ? standingCalendar(year, plant) : newCalendar(year, plant);
}
