/** The rules of arrival, covers, growth and rest on their very bounds and a day or a hair beside them. The bounds are our working figures. */
import { describe, expect, it } from 'vitest';
import { arrivalOf, arrivalWindows, skipsAutumn } from '../../src/core/care/arrival.ts';
import { careCalendar, standingCalendar } from '../../src/core/care/calendar.ts';
import type { CareYear } from '../../src/core/care/careYear.ts';
import { groundWindows } from '../../src/core/care/groundWindows.ts';
import { growingWindows, pruning, ripeningWindows } from '../../src/core/care/growingWindows.ts';
import { guideCalendar } from '../../src/core/care/guideCalendar.ts';
import { temperatureText } from '../../src/core/care/guideMeasures.ts';
import type { PlantInCare } from '../../src/core/care/plantInCare.ts';
import { plantingOf } from '../../src/core/care/planting.ts';
import { coverNewLeaves, potWindows } from '../../src/core/care/potWindows.ts';
import { tasksOfGuide } from '../../src/core/care/taskTable.ts';
import type { Window } from '../../src/core/care/window.ts';
import { addDays, day } from '../../src/core/days.ts';
import type { Form } from '../../src/core/records/common.ts';
import { guideKinds } from '../../src/core/records/guide.ts';
import { fig, figure } from '../match/places.ts';
import { about, coldYear, mildYear, never, sawtooth } from './roundYear.ts';

const plant = (form: Form, over: Partial<PlantInCare> = {}): PlantInCare => ({
  species: fig,
  form,
  arrives: day('2026-10-01'),
  stage: 'first-winter',
  kept: 'pot',
  potLiters: 11.4,
  ...over,
});
const daysOf = (windows: readonly Window[], name: string) =>
  windows.filter(window => window.name === name).map(({ from, to }) => [from, to]);
const steady = (meanC: number) => Array.from({ length: 365 }, () => meanC);
const nowhere = Object.fromEntries(
  ['36F', '32F', '28F', '24F', '20F'].map(key => [key, never]),
) as CareYear['firstFreeze'];

describe('what becomes of a tree that arrives', () => {
  // First freeze of an early year on day 70; safe on day 290, brought into the light on day 252.
  it('in leaf is late in the six weeks before the freezes and until pots are woken', () => {
    const at = (day: number) => arrivalOf(coldYear(), plant('leafed-pot'), day);
    expect([28, 29, 251, 252].map(at)).toEqual(['settles', 'late-in-leaf', 'late-in-leaf', 'settles']);
    expect(arrivalOf(mildYear(), plant('leafed-pot'), 100)).toBe('settles');
  });

  it('leafless is stored until the rest is woken', () => {
    const at = (day: number) => arrivalOf(coldYear(), plant('dormant-pot'), day);
    expect([251, 252].map(at)).toEqual(['stored', 'wakes']);
  });

  it('leafless in warmth grows where 90 days are left before the freezes, or the season is long', () => {
    const early = (first: number) =>
      coldYear({ firstFreeze: { ...coldYear().firstFreeze, '32F': about(first + 10, 10) } });
    expect(arrivalOf(early(110), plant('bare-root'), 20)).toBe('wakes');
    expect(arrivalOf(early(109), plant('bare-root'), 20)).toBe('stored');
    const long = { placeClass: { winter: 'cool', season: 'long', summer: 'hot', air: 'dry' } } as const;
    const growsOn = { ...early(109), ...long };
    expect(arrivalOf(growsOn, plant('bare-root'), 20)).toBe('wakes');
    // Never on the day of the freeze itself.
    expect(arrivalOf({ ...growsOn, meanC: steady(15) }, plant('bare-root'), 108)).toBe('wakes');
    expect(arrivalOf({ ...growsOn, meanC: steady(15) }, plant('bare-root'), 109)).toBe('stored');
  });

  it('leafless takes 10 C for warmth', () => {
    const at = (meanC: number) => arrivalOf(mildYear({ meanC: steady(meanC) }), plant('dormant-pot'), 180);
    expect([at(10), at(9.99)]).toEqual(['wakes', 'stands-out']);
    const stored = (meanC: number) =>
      arrivalOf(
        { ...coldYear({ meanC: steady(meanC) }), firstFreeze: { ...nowhere, '32F': about(200, 10) } },
        plant('dormant-pot'),
        20,
      );
    expect([stored(10), stored(9.99)]).toEqual(['wakes', 'stored']);
  });

  it('passes its first fall once leaves are down', () => {
    // Leaves are down on day 90.
    expect(skipsAutumn('late-in-leaf', coldYear(), 89)).toBe(false);
    expect(skipsAutumn('late-in-leaf', coldYear(), 90)).toBe(true);
    expect(skipsAutumn('stored', coldYear(), 10)).toBe(true);
    expect(skipsAutumn('stands-out', coldYear(), 10)).toBe(true);
    expect(skipsAutumn('settles', coldYear(), 200)).toBe(false);
    expect(skipsAutumn('wakes', coldYear(), 200)).toBe(false);
  });

  it('with bare roots is kept wrapped no longer than they keep, and potted up where that is too short', () => {
    const roots = { ...fig, bareRootKeepsDays: figure(30, 20, 40) };
    const names = (plantFrom: number | null) =>
      arrivalWindows(coldYear(), plant('bare-root', { species: roots }), 200, 'stored', plantFrom)
        .filter(({ name }) => ['keep-wrapped', 'soak-roots', 'pot-up', 'store-on-arrival'].includes(name))
        .map(({ name, from, to }) => `${name} ${from} ${to}`);
    expect(names(200)).toEqual(['soak-roots 200 200']);
    expect(names(201)).toEqual(['soak-roots 200 200']);
    expect(names(202)).toEqual(['keep-wrapped 200 201', 'soak-roots 202 202']);
    expect(names(240)).toEqual(['keep-wrapped 200 239', 'soak-roots 240 240']);
    expect(names(241)).toEqual(['soak-roots 200 200', 'pot-up 200 201', 'store-on-arrival 200 202']);
    expect(names(null)).toEqual(['soak-roots 200 200', 'pot-up 200 201', 'store-on-arrival 200 202']);
  });

  it('in leaf and late is held until its leaves fall or pots go in, else until it is hardened', () => {
    const held = (at: number) => {
      const windows = arrivalWindows(coldYear(), plant('leafed-pot'), at, 'late-in-leaf', null);
      return [daysOf(windows, 'hold-late-leaves'), daysOf(windows, 'harden')];
    };
    // A first-year tree goes in on day 82: held to the day before. After leaf fall it is kept awake, and hardened in the two weeks before day 290.
    expect(held(60)).toEqual([[[60, 81]], []]);
    expect(held(85)).toEqual([[[85, 85]], []]);
    expect(held(90)).toEqual([[[90, 275]], [[276, 289]]]);
    expect(held(280)).toEqual([[[280, 281]], [[282, 289]]]);
  });
});

describe('planting on its bounds', () => {
  const window = (year: CareYear, form: Form, at: number, asleep = true) => {
    const found = plantingOf(year, plant(form), at, asleep).window!;
    return [found.name, found.from, found.to];
  };

  it('of a leafless tree ends so many days from the coldest ones, or from when the soil can be dug', () => {
    // Growth begins after all of them; young wood stands the winter.
    const late = { budbreak: about(320, 10), winterLowC: -5 };
    const cool = coldYear({ ...late, meanC: sawtooth(3, 30) });
    expect(window(cool, 'bare-root', 240)).toEqual(['plant-dormant', 240, 255]);
    expect(window(cool, 'dormant-pot', 260)).toEqual(['plant-dormant', 261, 285]);
    const mild = coldYear({ ...late, meanC: sawtooth(9, 30) });
    expect(window(mild, 'bare-root', 200)).toEqual(['plant-dormant', 200, 225]);
    expect(window(mild, 'dormant-pot', 200)).toEqual(['plant-dormant', 201, 225]);
    // 30 - 40 x (365 - at) / 185 is 4 on day 245.
    const frozen = coldYear({ ...late, meanC: sawtooth(-10, 30) });
    expect(window(frozen, 'bare-root', 260)).toEqual(['plant-dormant', 260, 287]);
    expect(window(frozen, 'dormant-pot', 270)).toEqual(['plant-dormant', 271, 301]);
    // On the last day it may still be planted, a day later it waits until it is in leaf.
    expect(window(frozen, 'bare-root', 287)).toEqual(['plant-dormant', 287, 287]);
    expect(window(frozen, 'bare-root', 288)[0]).toBe('plant-out');
  });

  it('of a leafless tree waits for the end of the cold only where young wood is short of it', () => {
    // First-winter wood stands -5 C here; the last such night of a late year is on day 270.
    const at = (winterLowC: number) =>
      window(coldYear({ winterLowC, meanC: sawtooth(-10, 30), budbreak: about(320, 10) }), 'bare-root', 150);
    expect(at(-5)).toEqual(['plant-dormant', 245, 287]);
    expect(at(-5.01)).toEqual(['plant-dormant', 270, 287]);
  });

  it('of a leafless pot goes on in fall where young wood has a zone to spare', () => {
    const at = (winterLowC: number, coldC = 3) =>
      window(coldYear({ winterLowC, meanC: sawtooth(coldC, 30) }), 'dormant-pot', 20);
    // From 75 days before the coldest ones, once leaves are down; else 45 days after them.
    expect(at(0.6)).toEqual(['plant-dormant', 105, 147]);
    expect(at(0.59)[1]).toBeGreaterThan(180);
    expect(at(0.6, -10)[1]).toBeGreaterThan(180);
    expect(window(coldYear({ winterLowC: 2, meanC: sawtooth(3, 30) }), 'bare-root', 20)[1]).toBe(195);
  });
});

describe('a tree in the ground on its bounds', () => {
  const ground = (over: Partial<CareYear>, winter: 1 | 2 | 3 = 3) => groundWindows(coldYear(over), winter);

  it('is mulched where the coldest weeks are under 10 C, or a cover goes on', () => {
    const mulched = (coldC: number, over: Partial<CareYear> = {}, winter: 1 | 3 = 3) =>
      daysOf(ground({ meanC: sawtooth(coldC, 30), ...over }, winter), 'mulch');
    expect(mulched(9.9)).toHaveLength(1);
    expect(mulched(10)).toEqual([]);
    // Covered from day 90: mulch in the two weeks before, in the mildest place too.
    expect(mulched(12, {}, 1)).toEqual([[76, 89]]);
    expect(mulched(-6, { firstFreeze: nowhere })).toEqual([]);
  });

  it('has its trunk whitened where the air is dry and the hottest days reach 32 C', () => {
    const whitened = (over: Partial<CareYear>) => daysOf(ground(over), 'shade-trunk').length;
    expect(whitened({ hottestHighC: 32 })).toBe(1);
    expect(whitened({ hottestHighC: 31.9 })).toBe(0);
    expect(whitened({ placeClass: { ...coldYear().placeClass, air: 'fair' } })).toBe(0);
  });

  it('is covered from leaf fall and the first hard freeze on, four weeks before the coldest days at the latest', () => {
    const covered = (over: Partial<CareYear>) => daysOf(ground(over, 1), 'protect');
    // Leaves down on day 90; 28 F on day 90. Young wood is at risk from day 100 in one year in ten.
    expect(covered({})).toEqual([[90, 100]]);
    expect(covered({ leafFall: about(95, 10) })).toEqual([[95, 102]]);
    expect(covered({ firstFreeze: { ...coldYear().firstFreeze, '28F': about(97, 10) } })).toEqual([
      [97, 104],
    ]);
    // Where leaves hang on it is day 180 less 28, and a week at the least, four at the most.
    expect(covered({ leafFall: about(170, 10) })).toEqual([[160, 167]]);
    expect(covered({ leafFall: about(160, 30) })).toEqual([[152, 159]]);
    const safe = { young: about(140, 10), established: never };
    expect(covered({ coldRiskFirst: safe })).toEqual([[90, 118]]);
    expect(covered({ coldRiskFirst: { young: never, established: never } })).toEqual([[90, 118]]);
    expect(covered({ leafFall: never })).toEqual([]);
  });

  it('is uncovered when 24 F comes later in one year in ten, two weeks after it was covered at the soonest', () => {
    const off = (over: Partial<CareYear>) => daysOf(ground(over, 1), 'uncover');
    const last = (p90: number | null, later: number | null) => ({
      lastFreeze: { ...coldYear().lastFreeze, '24F': { ...never, p90 }, '28F': { ...never, p90: later } },
    });
    expect(off({})).toEqual([[270, 280]]);
    expect(off(last(260, 264))).toEqual([[260, 267]]);
    expect(off(last(260, null))).toEqual([[260, 274]]);
    // Without such nights: the last that young wood does not stand (270), else two weeks before growth (280).
    expect(off(last(null, 275))).toEqual([[270, 277]]);
    expect(off({ ...last(null, 275), coldRiskLast: { young: never, established: never } })).toEqual([
      [266, 275],
    ]);
    expect(off(last(105, 110))).toEqual([[114, 121]]);
  });
});

describe('growth and rest on their bounds', () => {
  it('new leaves are covered from budbreak to the safe day, where that comes later', () => {
    expect(coverNewLeaves(coldYear(), 280, 290)).toMatchObject({ from: 280, to: 290 });
    expect(coverNewLeaves(coldYear(), 280, 281)).toMatchObject({ from: 280, to: 281 });
    expect(coverNewLeaves(coldYear(), 280, 280)).toBeNull();
    expect(coverNewLeaves(coldYear(), 280, null)).toBeNull();
  });

  it('pruning is the five weeks that end a week before buds may break, within sleep, and after a cover', () => {
    const pruned = (over: Partial<CareYear>, notBefore: number | null = null) => {
      const { from, to } = pruning(coldYear(over), notBefore);
      return [from, to];
    };
    expect(pruned({})).toEqual([238, 273]);
    expect(pruned({ dormant: about(250, 10) })).toEqual([250, 273]);
    expect(pruned({ dormant: never, leafFall: about(245, 5) })).toEqual([245, 273]);
    expect(pruned({}, 250)).toEqual([250, 273]);
    // A cover that comes off as late as the buds leaves two weeks.
    expect(pruned({}, 273)).toEqual([273, 287]);
    expect(pruned({}, 280)).toEqual([280, 294]);
    // Without a sleep to rely on: from 15 days before the coldest ones, to a week before growth or 30 days after them.
    expect(pruned({ leafFall: never })).toEqual([165, 203]);
    expect(pruned({ leafFall: never, budbreak: about(195, 5) })).toEqual([165, 183]);
    expect(pruned({ leafFall: never, budbreak: about(180, 5) })).toEqual([165, 179]);
  });

  it('less water is given from the first freezes or leaf fall on, whichever is sooner', () => {
    expect(daysOf(ripeningWindows(coldYear()), 'ease-water')).toEqual([[70, 90]]);
    expect(daysOf(ripeningWindows(coldYear({ leafFall: about(70, 5) })), 'ease-water')).toEqual([[65, 70]]);
    expect(daysOf(ripeningWindows(coldYear({ firstFreeze: nowhere })), 'ease-water')).toEqual([[80, 90]]);
    const early = ripeningWindows(coldYear({ leafFall: { p10: 80, p50: 90, p90: null } }));
    expect(daysOf(early, 'leaf-fall')).toEqual([[80, 90]]);
  });

  it('feeding begins two weeks after leaves or the day it goes out', () => {
    const fed = (outFrom: number, leafed?: number) =>
      daysOf(growingWindows(coldYear(), outFrom, true, leafed), 'feed');
    expect(fed(0)).toEqual([[304, 375]]);
    expect(fed(300)).toEqual([[314, 375]]);
    expect(fed(0, 250)).toEqual([[264, 375]]);
    expect(daysOf(growingWindows(coldYear(), 0, false), 'stop-feeding')).toEqual([[3, 10]]);
  });

  it('a pot is sheltered from a week before such nights to a week after', () => {
    const sheltered = (over: Partial<CareYear>) =>
      daysOf(potWindows(mildYear(over), 'soft'), 'shelter-nights');
    const first = { p10: 150, p50: null, p90: null };
    expect(sheltered({ potRiskFirst: first })).toEqual([[143, 157]]);
    expect(sheltered({ potRiskFirst: first, potRiskLast: { ...never, p90: 190 } })).toEqual([[143, 197]]);
  });
});

describe('a calendar on its bounds', () => {
  const on = (at: number) => addDays(day('2026-07-24'), at);
  const tasks = (at: number, over: Partial<PlantInCare> = {}, year = coldYear()) =>
    careCalendar(year, plant('leafed-pot', { arrives: on(at), ...over })).tasks;
  const task = (found: ReturnType<typeof tasks>, id: string) => {
    const one = found.find(each => each.id === id);
    return one ? [one.range.from, one.range.to] : null;
  };

  it('drops what arrival leaves of a longer task when it is under three days', () => {
    // Less water from day 70 to 90 of the season.
    const standing = (at: number) =>
      standingCalendar(coldYear(), plant('dormant-pot', { arrives: on(at), stage: 'established' })).tasks;
    expect(task(standing(88), 'ease-water-2026')).toEqual([on(88), on(90)]);
    expect(task(standing(89), 'ease-water-2026')).toBeNull();
  });

  it('leaves a new tree alone for three weeks', () => {
    // Fed from day 304 on: one that comes on day 300 not before day 321.
    expect(task(tasks(300), 'feed-2026')![0]).toBe(on(321));
    expect(task(tasks(283), 'feed-2026')![0]).toBe(on(304));
    expect(task(tasks(282), 'feed-2026')![0]).toBe(on(304));
    expect(task(tasks(284), 'feed-2026')![0]).toBe(on(305));
  });

  it('runs for 560 days, and tells no task twice', () => {
    const { from, to, tasks: all } = careCalendar(coldYear(), plant('leafed-pot', { arrives: on(300) }));
    expect([from, to]).toEqual([on(300), on(860)]);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
  });

  it('begins with what the season before has left to do, and reaches into the second fall to come', () => {
    const standing = standingCalendar(
      coldYear(),
      plant('dormant-pot', { arrives: on(5), stage: 'established' }),
    ).tasks;
    // Feeding of the summer before goes on to day 10 of this season.
    expect(task(standing, 'feed-2025')).toEqual([on(5), on(10)]);
    const late = (found: ReturnType<typeof tasks>) => found.some(({ id }) => id === 'leaf-fall-2028');
    const from300 = standingCalendar(
      coldYear(),
      plant('dormant-pot', { arrives: on(300), stage: 'established' }),
    ).tasks;
    expect([late(from300), late(tasks(300)), late(standing)]).toEqual([true, true, false]);
    expect(late(tasks(300, { kept: 'ground' }))).toBe(true);
  });

  it('of a standing tree says what its winter rests on in the ground, and nothing in a pot', () => {
    const because = (kept: 'pot' | 'ground', winterLowC: number) =>
      standingCalendar(
        coldYear({ winterLowC }),
        plant('dormant-pot', { arrives: on(0), kept, stage: 'established' }),
      ).because.length;
    expect(because('pot', -9)).toBe(0);
    expect(because('pot', -60)).toBe(0);
    expect(because('ground', -9)).toBe(2);
    expect(because('ground', -60)).toBe(3);
  });
});

describe('the calendar beside a guide', () => {
  const from = day('2026-11-25');
  const until = addDays(from, 548);

  it.each(guideKinds)('%s: tells its own tasks of 18 months once each, in the order of their days', kind => {
    for (const year of [coldYear(), mildYear()]) {
      const found = guideCalendar(kind, year, from);
      expect(new Set(found.map(({ id }) => id)).size).toBe(found.length);
      for (const { name, range } of found) {
        expect(tasksOfGuide[kind]).toContain(name);
        expect(range.from <= until && range.to >= from).toBe(true);
      }
      const keys = found.map(({ id, range }) => `${range.from} ${id}`);
      expect(keys).toEqual([...keys].sort());
    }
  });

  it('speaks of a first winter in the ground, of both forms that are planted, and nothing of a day of arrival', () => {
    const names = (kind: (typeof guideKinds)[number], year = coldYear()) =>
      new Set(guideCalendar(kind, year, from).map(({ name }) => name));
    // First-winter wood is covered here, established wood mulched alone.
    expect(names('overwintering-ground').has('protect')).toBe(true);
    expect([names('establishing').has('plant-dormant'), names('establishing').has('plant-out')]).toEqual([
      true,
      true,
    ]);
    expect([names('arrival').size, names('propagation').size]).toEqual([0, 0]);
    // Pruned in the store in the cold place, outdoors in the mild one.
    const pruned = (year: CareYear) =>
      guideCalendar('pruning', year, from).find(({ name }) => name === 'prune')!.trigger;
    expect(pruned(coldYear())).toMatch(/^In storage/);
    expect(pruned(mildYear())).toMatch(/^While it sleeps/);
  });
});

it('temperatures of a record are shown in the unit of the reader first', () => {
  expect(temperatureText(-5, -4, 'us')).toBe('23 to 25 F (-5 to -4 C)');
  expect(temperatureText(-5, -4, 'metric')).toBe('-5 to -4 C (23 to 25 F)');
  expect(temperatureText(-5, -5, 'metric')).toBe('-5 C (23 F)');
});
