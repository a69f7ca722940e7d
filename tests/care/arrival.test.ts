/** What becomes of a tree on the day it arrives. Common practice, no source, unless said otherwise. */

import { describe, expect, it } from 'vitest';
import { type CareTask, careCalendar } from '../../src/core/care/calendar.ts';
import { careFigures } from '../../src/core/care/careFigures.ts';
import type { TaskName } from '../../src/core/care/guideVocabulary.ts';
import type { PlantInCare } from '../../src/core/care/plantInCare.ts';
import { day, daysBetween } from '../../src/core/days.ts';
import type { Form } from '../../src/core/records/common.ts';
import { celsiusToFahrenheit } from '../../src/core/units.ts';
import { realSpecies, realYear } from './realPlaces.ts';

function calendar(
  placeId: string,
  form: Form,
  arrives: string,
  over: Partial<PlantInCare> = {},
  speciesId = 'fig',
) {
  const plant: PlantInCare = {
    species: realSpecies(speciesId),
    form,
    arrives: day(arrives),
    stage: 'first-winter',
    kept: 'pot',
    potLiters: 11,
    ...over,
  };
  return careCalendar(realYear(placeId, speciesId), plant).tasks;
}

const first = (tasks: readonly CareTask[], name: TaskName) => tasks.find(task => task.name === name);
const names = (tasks: readonly CareTask[]) => tasks.map(({ name }) => name);

describe('a tree in leaf', () => {
  it('that arrives late in a short season loses its leaves and is stored: no leaves are needed before spring', () => {
    const fall = calendar('minneapolis-mn', 'leafed-pot', '2026-09-10');
    expect(first(fall, 'hold-late-leaves')?.trigger).toMatch(/Let the leaves fall/);
    expect(first(fall, 'move-in')!.range.from > first(fall, 'hold-late-leaves')!.range.to).toBe(true);
    const winter = calendar('minneapolis-mn', 'leafed-pot', '2027-01-10');
    expect(first(winter, 'hold-late-leaves')?.trigger).toMatch(/^Not outdoors, and not into the dark/);
    expect(names(winter).slice(0, 5)).not.toContain('water-stored');
    expect(first(winter, 'move-in')!.range.from > day('2027-09-01')).toBe(true);
  });

  it('that arrives in spring or in a long season settles in and grows on', () => {
    for (const [placeId, arrives] of [
      ['minneapolis-mn', '2026-06-05'],
      ['mobile-al', '2026-10-01'],
      ['melbourne-au', '2026-11-20'],
    ] as const) {
      const tasks = calendar(placeId, 'leafed-pot', arrives);
      expect(names(tasks)).toContain('settle-in');
      expect(names(tasks)).not.toContain('hold-late-leaves');
    }
  });
});

describe('a leafless tree', () => {
  it('that arrives in warmth grows within one to two weeks, and is told so', () => {
    // Common practice, no source: once warm, an unwoken tree resumes growth in one to two weeks.
    expect(careFigures.regrowth).toMatchObject({ low: 7, high: 14, unit: 'days', standing: 'practice' });
    for (const [placeId, arrives] of [
      ['honolulu-hi', '2026-12-01'],
      ['phoenix-az', '2026-11-10'],
      ['minneapolis-mn', '2026-05-20'],
    ] as const) {
      const waking = first(calendar(placeId, 'dormant-pot', arrives), 'wake-on-arrival')!;
      expect(waking.trigger).toMatch(/one to two weeks/);
      expect(daysBetween(waking.range.from, waking.range.to)).toBe(14);
    }
  });

  it('that arrives in a cold winter is stored until spring', () => {
    const tasks = calendar('lincoln-ne', 'dormant-pot', '2026-12-10');
    expect(names(tasks).slice(0, 3)).toEqual(['unpack', 'stand-apart', 'store-on-arrival']);
    expect(first(tasks, 'wake')!.range.from > day('2027-03-01')).toBe(true);
  });

  it('that comes bare-root is soaked for hours, then planted, kept wrapped or potted', () => {
    const inPot = calendar('lincoln-ne', 'bare-root', '2026-12-10');
    expect(first(inPot, 'soak-roots')!.range).toEqual({ from: '2026-12-10', to: '2026-12-10' });
    expect(names(inPot)).toContain('pot-up');
    const waits = calendar('asheville-nc', 'bare-root', '2027-01-20', { kept: 'ground' }, 'jujube');
    expect(names(waits)).toEqual(expect.arrayContaining(['keep-wrapped', 'soak-roots', 'plant-dormant']));
    expect(names(waits)).not.toContain('pot-up');
    const { from, to } = first(waits, 'keep-wrapped')!.range;
    expect(daysBetween(from, to)).toBeLessThanOrEqual(realSpecies('jujube').bareRootKeepsDays.high);
    expect(first(waits, 'soak-roots')!.range.from).toBe(first(waits, 'plant-dormant')!.range.from);
  });
});

describe('putting away', () => {
  const coldPlaces = ['minneapolis-mn', 'lincoln-ne', 'boston-ma', 'denver-co', 'munich-de'] as const;
  const movesIn = (placeId: string, over: Partial<PlantInCare>, speciesId = 'fig') =>
    first(calendar(placeId, 'dormant-pot', '2026-06-01', over, speciesId), 'move-in')!;

  it('of a lignified tree in a large pot comes only after nights of about 25 to 20 F', () => {
    // Common practice, no source.
    expect(celsiusToFahrenheit(careFigures.moveInNights.low)).toBeCloseTo(20, 0);
    expect(celsiusToFahrenheit(careFigures.moveInNights.high)).toBeCloseTo(25, 0);
    for (const placeId of coldPlaces) {
      const year = realYear(placeId, 'fig', 53);
      const moveIn = movesIn(placeId, { stage: 'established', potLiters: 53 });
      const start = daysBetween(day('2026-07-24'), moveIn.range.from);
      const usual24 = Math.max(year.firstFreeze['24F'].p50!, year.leafFall.p50!);
      expect(Math.abs(start - usual24), placeId).toBeLessThanOrEqual(7);
      expect(moveIn.trigger).toMatch(/25 to 20 F/);
    }
  });

  it('of a young tree comes before the nights that damage young figs', () => {
    // Damaged at 25 to 27 F in early fall: Rutgers fact sheet FS1198.
    for (const placeId of coldPlaces) {
      const small = movesIn(placeId, { stage: 'established', potLiters: 3 });
      const large = movesIn(placeId, { stage: 'established', potLiters: 53 });
      expect(small.trigger).toMatch(/before any night of 27 F/);
      expect(small.range.from < large.range.from, placeId).toBe(true);
      expect(small.because.some(({ source }) => source?.includes('FS1198'))).toBe(true);
    }
  });

  it('is preceded by water and mulch', () => {
    for (const placeId of coldPlaces) {
      const tasks = calendar(placeId, 'dormant-pot', '2026-06-01', { stage: 'established' });
      const [ready, moveIn] = [first(tasks, 'ready-for-store')!, first(tasks, 'move-in')!];
      expect(daysBetween(ready.range.from, moveIn.range.from)).toBeGreaterThanOrEqual(1);
      expect(ready.trigger).toMatch(/water the pot through.*leaves or straw/);
      // In spring the first feed, then a larger pot or the ground: common practice, no source.
      const next = calendar(placeId, 'dormant-pot', '2026-06-01', { stage: 'established' });
      const fed = next.find(task => task.name === 'feed' && task.range.from > moveIn.range.to)!;
      const potted = next.find(task => task.name === 'pot-on' && task.range.from > moveIn.range.to)!;
      expect(fed.range.from < potted.range.from).toBe(true);
    }
  });
});

describe('an established tree', () => {
  it('has no arrival and no planting', () => {
    const arriving: readonly TaskName[] = [
      'unpack',
      'stand-apart',
      'soak-roots',
      'settle-in',
      'plant-out',
      'plant-dormant',
      'water-new',
    ];
    for (const kept of ['pot', 'ground'] as const) {
      const tasks = calendar('asheville-nc', 'dormant-pot', '2026-06-01', { stage: 'established', kept });
      expect(names(tasks).filter(name => arriving.includes(name))).toEqual([]);
    }
  });
});
