/** Windows of calendars from years of round figures, each worked out beside it; the sums rest on the figures of `careFigures.ts`. */

import { describe, expect, it } from 'vitest';
import { arrivalOf, arrivalWindows } from '../../src/core/care/arrival.ts';
import type { CareYear } from '../../src/core/care/careYear.ts';
import { groundWindows } from '../../src/core/care/groundWindows.ts';
import { calendarFacts } from '../../src/core/care/guideFacts.ts';
import { plantedWater } from '../../src/core/care/plantedWater.ts';
import type { PlantInCare } from '../../src/core/care/plantInCare.ts';
import { plantingOf } from '../../src/core/care/planting.ts';
import { potWindows } from '../../src/core/care/potWindows.ts';
import { potWinter, wakingOf } from '../../src/core/care/turningPoints.ts';
import type { Window } from '../../src/core/care/window.ts';
import { day } from '../../src/core/days.ts';
import { ripenesses } from '../../src/core/phenology/puttingAway.ts';
import type { Form } from '../../src/core/records/common.ts';
import { realSpecies } from './realPlaces.ts';
import { coldYear, mildYear, never, sawtooth } from './roundYear.ts';

const told = (windows: readonly Window[]) => windows.map(({ name, from, to }) => `${name} ${from} ${to}`);
const lines = (text: string) => text.trim().split(/\s*\n\s*/);
const plant = (form: Form, over: Partial<PlantInCare> = {}): PlantInCare => ({
  species: realSpecies('fig'),
  form,
  arrives: day('2026-10-01'),
  stage: 'first-winter',
  kept: 'ground',
  potLiters: 11.4,
  ...over,
});
const nowhere = Object.fromEntries(
  ['36F', '32F', '28F', '24F', '20F'].map(key => [key, never]),
) as CareYear['firstFreeze'];
const frostFree = () =>
  mildYear({ leafFall: never, firstFreeze: nowhere, lastFreeze: nowhere, budbreak: never, evergreen: true });

describe('a pot', () => {
  it('in a cold place', () => {
    // Leaves at 90: in from then to the night of 25 F (usual day 110 - 1, at most 14 days on). Light when the mean of the days is 8 C (day 252,
    // before safe day 290 - 21). At 10 C or more buds swell after 2,458 growing degree hours (day 270) and open after 4,096 (279); the slowest
    // after 7,928 (295). Hardened from the first leaves. Fed 14 days after it goes out, last fed 70 days before the first freeze (80 - 70);
    // a larger pot a week after the first feed, for four weeks.
    expect(told(potWindows(coldYear(), 'half-ripe'))).toEqual(
      lines(`
      ease-water 70 90
      leaf-fall 80 100
      ready-for-store 86 90
      move-in 90 104
      water-stored 105 251
      inspect-stored 105 251
      prune 224 251
      wake 252 259
      water-waking 259 278
      watch-buds 270 295
      harden 279 289
      move-out 290 304
      pot-on 311 339
      stop-feeding 3 10
      feed 304 375
      water-growing 279 455`),
    );
  });

  it('goes in by how ripe it is', () => {
    // Soft: with the first light frost (82), before 27 F comes in one year in ten (100 - 10 - 1). Ripe: after the 24 F night (92); hardy (97).
    const days = ripenesses.map(ripeness => {
      const windows = potWindows(coldYear(), ripeness);
      return ['ready-for-store', 'move-in', 'water-stored'].flatMap(name =>
        told(windows.filter(window => window.name === name)),
      );
    });
    expect(days).toEqual([
      lines(`
      ready-for-store 78 82
      move-in 82 89
      water-stored 90 251`),
      ['ready-for-store 86 90', 'move-in 90 104', 'water-stored 105 251'],
      lines(`
      ready-for-store 88 92
      move-in 92 106
      water-stored 107 251`),
      lines(`
      ready-for-store 93 97
      move-in 97 111
      water-stored 112 251`),
    ]);
  });

  it('goes in before its roots are at risk in one year in ten', () => {
    const windows = potWindows(coldYear({ potRiskFirst: { p10: 96, p50: 100, p90: 110 } }), 'ripe');
    expect(told(windows.filter(({ name }) => name === 'move-in'))).toEqual(['move-in 91 96']);
  });

  it('in a mild place stands out', () => {
    // Pruned up to a week before buds may open (225 - 7), for five weeks. Fed from 235 + 14 to 70 days before leaf fall may begin or freezes come.
    expect(told(potWindows(mildYear(), 'soft'))).toEqual(
      lines(`
      ease-water 120 140
      leaf-fall 130 150
      prune 183 218
      cover-new-leaves 225 230
      pot-on 256 284
      stop-feeding 53 60
      feed 249 425
      water-growing 235 505`),
    );
  });

  it('is sheltered from a week before the nights of one winter in ten to a week after', () => {
    const rare = mildYear({
      coldRiskFirst: { young: { p10: 170, p50: null, p90: null }, established: never },
      coldRiskLast: { young: { p10: null, p50: null, p90: 190 }, established: never },
    });
    expect(potWinter(rare)).toBe('shelter');
    expect(told(potWindows(rare, 'soft')).filter(text => text.startsWith('shelter'))).toEqual([
      'shelter-nights 163 197',
    ]);
    expect([potWinter(coldYear()), potWinter(mildYear())]).toEqual(['store', 'stand-out']);
  });

  it('goes straight out where its leaves open after the safe day', () => {
    const late = coldYear({ meanC: sawtooth(-20, 26) });
    const names = potWindows(late, 'half-ripe').map(({ name }) => name);
    expect(names).not.toContain('harden');
    const { light, swell, leaves, lastLeaves } = wakingOf(late, 290);
    expect([light, swell, leaves, lastLeaves]).toEqual([269, 288, 303, 323]);
  });
});

describe('a tree in the ground', () => {
  it('in a cold place, covered in its first two winters', () => {
    // -9 C in one winter in ten: 4 C short of first-winter wood, a cage. On after the median 28 F (90), mulch in the two weeks before; off when
    // 24 F comes later in one year in ten (270).
    const first = lines(`
      ease-water 70 90
      leaf-fall 80 100
      mulch 76 89
      protect 90 100
      inspect-protection 114 263
      uncover 270 280
      prune 270 273
      cover-new-leaves 280 290
      shade-trunk 290 320
      stop-feeding 3 10
      feed 304 375
      water-growing 290 455`);
    expect(told(groundWindows(coldYear(), 1))).toEqual(first);
    expect(told(groundWindows(coldYear(), 2))).toEqual(first);
    // Once established it stands that with a mulched crown: 30 days after the first freeze.
    expect(told(groundWindows(coldYear(), 3))).toEqual(
      lines(`
      ease-water 70 90
      leaf-fall 80 100
      mulch 110 125
      prune 238 273
      cover-new-leaves 280 290
      shade-trunk 290 320
      stop-feeding 3 10
      feed 304 375
      water-growing 290 455`),
    );
  });

  it('in a mild place and where it never freezes', () => {
    expect(told(groundWindows(mildYear(), 1))).toEqual(
      lines(`
      ease-water 120 140
      leaf-fall 130 150
      mulch 160 175
      prune 183 218
      cover-new-leaves 225 230
      shade-trunk 235 265
      stop-feeding 53 60
      feed 249 425
      water-growing 235 505`),
    );
    // The coolest weeks, 30 days either side of day 180, are its rest; growth after them.
    expect(told(groundWindows(frostFree(), 1))).toEqual(
      lines(`
      rest 150 210
      prune 165 203
      shade-trunk 210 240
      stop-feeding 73 80
      feed 224 445
      water-growing 210 515`),
    );
  });
});

describe('planting', () => {
  const years: Record<string, CareYear> = {
    cold: coldYear(),
    mild: mildYear(),
    cool: coldYear({ meanC: sawtooth(3, 30) }),
    'cool hardy': coldYear({ meanC: sawtooth(3, 30), winterLowC: 2 }),
  };
  // Mild: bare-root within 45 days of the coldest day, a pot from 75 before. Cool: 15 to 75 and 45 to 105 after it, or in fall with a zone to spare.
  // Cold: when the soil can be dug and young wood is safe (270). In leaf: after the safe day (290; 230), ten days after it came.
  it.each([
    ['cold', 'bare-root', 20, 'plant-dormant 270 284'],
    ['cold', 'bare-root', 150, 'plant-dormant 270 284'],
    ['cold', 'bare-root', 200, 'plant-dormant 270 284'],
    ['cold', 'bare-root', 300, 'plant-out 310 352'],
    ['cold', 'dormant-pot', 20, 'plant-dormant 270 288'],
    ['cold', 'dormant-pot', 150, 'plant-dormant 270 288'],
    ['cold', 'dormant-pot', 200, 'plant-dormant 270 288'],
    ['cold', 'dormant-pot', 300, 'plant-out 310 352'],
    ['cold', 'leafed-pot', 20, 'plant-out 290 332'],
    ['cold', 'leafed-pot', 150, 'plant-out 290 332'],
    ['cold', 'leafed-pot', 200, 'plant-out 290 332'],
    ['cold', 'leafed-pot', 300, 'plant-out 310 352'],
    ['mild', 'bare-root', 20, 'plant-dormant 135 177'],
    ['mild', 'bare-root', 150, 'plant-dormant 150 192'],
    ['mild', 'bare-root', 200, 'plant-dormant 200 225'],
    ['mild', 'bare-root', 300, 'plant-out 310 320'],
    ['mild', 'dormant-pot', 20, 'plant-dormant 105 147'],
    ['mild', 'dormant-pot', 150, 'plant-dormant 151 193'],
    ['mild', 'dormant-pot', 200, 'plant-dormant 201 225'],
    ['mild', 'dormant-pot', 300, 'plant-out 310 320'],
    ['mild', 'leafed-pot', 20, 'plant-out 45 64'],
    ['mild', 'leafed-pot', 150, 'plant-out 230 272'],
    ['mild', 'leafed-pot', 200, 'plant-out 230 272'],
    ['mild', 'leafed-pot', 300, 'plant-out 310 320'],
    ['cool', 'bare-root', 20, 'plant-dormant 270 284'],
    ['cool', 'bare-root', 150, 'plant-dormant 270 284'],
    ['cool', 'bare-root', 200, 'plant-dormant 270 284'],
    ['cool', 'bare-root', 300, 'plant-out 310 352'],
    ['cool', 'dormant-pot', 20, 'plant-dormant 270 285'],
    ['cool', 'dormant-pot', 150, 'plant-dormant 270 285'],
    ['cool', 'dormant-pot', 200, 'plant-dormant 270 285'],
    ['cool', 'dormant-pot', 300, 'plant-out 310 352'],
    ['cool', 'leafed-pot', 20, 'plant-out 290 332'],
    ['cool', 'leafed-pot', 150, 'plant-out 290 332'],
    ['cool', 'leafed-pot', 200, 'plant-out 290 332'],
    ['cool', 'leafed-pot', 300, 'plant-out 310 352'],
    ['cool hardy', 'bare-root', 20, 'plant-dormant 195 237'],
    ['cool hardy', 'bare-root', 150, 'plant-dormant 195 237'],
    ['cool hardy', 'bare-root', 200, 'plant-dormant 200 242'],
    ['cool hardy', 'bare-root', 300, 'plant-out 310 352'],
    ['cool hardy', 'dormant-pot', 20, 'plant-dormant 105 147'],
    ['cool hardy', 'dormant-pot', 150, 'plant-dormant 151 193'],
    ['cool hardy', 'dormant-pot', 200, 'plant-dormant 201 243'],
    ['cool hardy', 'dormant-pot', 300, 'plant-out 310 352'],
    ['cool hardy', 'leafed-pot', 20, 'plant-out 290 332'],
    ['cool hardy', 'leafed-pot', 150, 'plant-out 290 332'],
    ['cool hardy', 'leafed-pot', 200, 'plant-out 290 332'],
    ['cool hardy', 'leafed-pot', 300, 'plant-out 310 352'],
  ] as const)('%s: %s on day %i', (name, form, at, expected) => {
    const { window, firstWinterCounts, potOnly } = plantingOf(
      years[name]!,
      plant(form),
      at,
      form !== 'leafed-pot',
    );
    expect(told([window!])).toEqual([expected]);
    expect([firstWinterCounts, potOnly]).toEqual([1, null]);
  });

  it('tells guides when', () => {
    expect(Object.values(years).map(year => calendarFacts(year)['dormant-planting'])).toEqual([
      'spring',
      'winter',
      'spring',
      'spring',
    ]);
    expect(calendarFacts(coldYear({ winterLowC: -40 }))).toEqual({
      pots: 'store',
      'late-leaves': 'drop',
      'dormant-planting': 'none',
      cover: 'pot',
    });
    expect(calendarFacts(mildYear())).toMatchObject({
      pots: 'stand-out',
      'late-leaves': 'grow',
      cover: 'none',
    });
  });
});

describe('water for a new tree', () => {
  it.each([
    // Asleep: until growth (290 or 235). Then twelve weeks, to leaf fall (90 or 140 of the next fall), and from the next growth to the next leaf fall.
    [
      'cold',
      true,
      200,
      230,
      'water-asleep 201 289; water-new 291 374; water-first-summer 375 455; water-second-summer 655 820',
    ],
    ['cold', false, 300, 340, 'water-new 301 424; water-first-summer 425 455; water-second-summer 655 820'],
    [
      'mild',
      true,
      200,
      230,
      'water-asleep 201 234; water-new 236 319; water-first-summer 320 505; water-second-summer 600 870',
    ],
    ['mild', false, 300, 340, 'water-new 301 424; water-first-summer 425 505; water-second-summer 600 870'],
  ] as const)('%s, asleep %s', (name, asleep, from, to, expected) => {
    const year = name === 'cold' ? coldYear() : mildYear();
    expect(told(plantedWater(year, { potLiters: 11.4 }, { from, to }, asleep)).join('; ')).toBe(expected);
  });

  it('says how much and how often', () => {
    // A 3/4-in stem: 1.9 gallons, in steps of half a liter. At 5 mm a day: every day, every 2.5 days, every week.
    const [water, later] = plantedWater(coldYear(), { potLiters: 11.4 }, { from: 300, to: 340 }, false);
    expect(water!.trigger).toMatch(
      /^1.8 gal \(7 L\) on the root ball at a time, every day for the first two weeks. Then until the twelfth week every 3 days in/,
    );
    expect(later!.trigger).toMatch(/every 7 days in/);
    // A pot of 26.5 L (#7) has a stem of 0.99 in: 2.5 gal.
    const large = plantedWater(coldYear(), { potLiters: 26.5 }, { from: 300, to: 340 }, false);
    expect(large[0]!.trigger).toMatch(/^2.5 gal \(9.5 L\) on the root ball at a time/);
  });
});

describe('arrival', () => {
  it.each([
    [
      'cold',
      'bare-root',
      20,
      'stored',
      'unpack 20 20; stand-apart 20 41; soak-roots 20 20; pot-up 20 21; store-on-arrival 20 22; water-stored 23 251; inspect-stored 23 251',
    ],
    [
      'cold',
      'bare-root',
      35,
      'stored',
      'unpack 35 35; stand-apart 35 56; soak-roots 35 35; pot-up 35 36; store-on-arrival 35 37; water-stored 38 251; inspect-stored 38 251',
    ],
    [
      'cold',
      'bare-root',
      95,
      'stored',
      'unpack 95 95; stand-apart 95 116; soak-roots 95 95; pot-up 95 96; store-on-arrival 95 97; water-stored 98 251; inspect-stored 98 251',
    ],
    [
      'cold',
      'bare-root',
      180,
      'stored',
      'unpack 180 180; stand-apart 180 201; soak-roots 180 180; pot-up 180 181; store-on-arrival 180 182; water-stored 183 251; inspect-stored 183 251',
    ],
    [
      'cold',
      'bare-root',
      255,
      'wakes',
      'unpack 255 255; stand-apart 255 276; soak-roots 255 255; pot-up 255 256; wake-on-arrival 255 269',
    ],
    [
      'cold',
      'bare-root',
      300,
      'wakes',
      'unpack 300 300; stand-apart 300 321; soak-roots 300 300; pot-up 300 301; wake-on-arrival 300 314',
    ],
    [
      'cold',
      'dormant-pot',
      20,
      'stored',
      'unpack 20 20; stand-apart 20 41; store-on-arrival 20 22; water-stored 23 251; inspect-stored 23 251',
    ],
    [
      'cold',
      'dormant-pot',
      35,
      'stored',
      'unpack 35 35; stand-apart 35 56; store-on-arrival 35 37; water-stored 38 251; inspect-stored 38 251',
    ],
    [
      'cold',
      'dormant-pot',
      95,
      'stored',
      'unpack 95 95; stand-apart 95 116; store-on-arrival 95 97; water-stored 98 251; inspect-stored 98 251',
    ],
    [
      'cold',
      'dormant-pot',
      180,
      'stored',
      'unpack 180 180; stand-apart 180 201; store-on-arrival 180 182; water-stored 183 251; inspect-stored 183 251',
    ],
    ['cold', 'dormant-pot', 255, 'wakes', 'unpack 255 255; stand-apart 255 276; wake-on-arrival 255 269'],
    ['cold', 'dormant-pot', 300, 'wakes', 'unpack 300 300; stand-apart 300 321; wake-on-arrival 300 314'],
    ['cold', 'leafed-pot', 20, 'settles', 'unpack 20 20; stand-apart 20 41; settle-in 20 34'],
    ['cold', 'leafed-pot', 35, 'late-in-leaf', 'unpack 35 35; stand-apart 35 56; hold-late-leaves 35 81'],
    [
      'cold',
      'leafed-pot',
      95,
      'late-in-leaf',
      'unpack 95 95; stand-apart 95 116; hold-late-leaves 95 275; harden 276 289',
    ],
    [
      'cold',
      'leafed-pot',
      180,
      'late-in-leaf',
      'unpack 180 180; stand-apart 180 201; hold-late-leaves 180 275; harden 276 289',
    ],
    ['cold', 'leafed-pot', 255, 'settles', 'unpack 255 255; stand-apart 255 276; settle-in 255 269'],
    ['cold', 'leafed-pot', 300, 'settles', 'unpack 300 300; stand-apart 300 321; settle-in 300 314'],
    [
      'mild',
      'bare-root',
      20,
      'wakes',
      'unpack 20 20; stand-apart 20 41; soak-roots 20 20; pot-up 20 21; wake-on-arrival 20 34',
    ],
    [
      'mild',
      'bare-root',
      35,
      'wakes',
      'unpack 35 35; stand-apart 35 56; soak-roots 35 35; pot-up 35 36; wake-on-arrival 35 49',
    ],
    [
      'mild',
      'bare-root',
      95,
      'wakes',
      'unpack 95 95; stand-apart 95 116; soak-roots 95 95; pot-up 95 96; wake-on-arrival 95 109',
    ],
    [
      'mild',
      'bare-root',
      180,
      'stands-out',
      'unpack 180 180; stand-apart 180 201; soak-roots 180 180; pot-up 180 181; stand-out 180 183',
    ],
    [
      'mild',
      'bare-root',
      255,
      'wakes',
      'unpack 255 255; stand-apart 255 276; soak-roots 255 255; pot-up 255 256; wake-on-arrival 255 269',
    ],
    [
      'mild',
      'bare-root',
      300,
      'wakes',
      'unpack 300 300; stand-apart 300 321; soak-roots 300 300; pot-up 300 301; wake-on-arrival 300 314',
    ],
    ['mild', 'dormant-pot', 20, 'wakes', 'unpack 20 20; stand-apart 20 41; wake-on-arrival 20 34'],
    ['mild', 'dormant-pot', 35, 'wakes', 'unpack 35 35; stand-apart 35 56; wake-on-arrival 35 49'],
    ['mild', 'dormant-pot', 95, 'wakes', 'unpack 95 95; stand-apart 95 116; wake-on-arrival 95 109'],
    ['mild', 'dormant-pot', 180, 'stands-out', 'unpack 180 180; stand-apart 180 201; stand-out 180 183'],
    ['mild', 'dormant-pot', 255, 'wakes', 'unpack 255 255; stand-apart 255 276; wake-on-arrival 255 269'],
    ['mild', 'dormant-pot', 300, 'wakes', 'unpack 300 300; stand-apart 300 321; wake-on-arrival 300 314'],
    ['mild', 'leafed-pot', 20, 'settles', 'unpack 20 20; stand-apart 20 41; settle-in 20 34'],
    ['mild', 'leafed-pot', 35, 'settles', 'unpack 35 35; stand-apart 35 56; settle-in 35 49'],
    ['mild', 'leafed-pot', 95, 'settles', 'unpack 95 95; stand-apart 95 116; settle-in 95 109'],
    ['mild', 'leafed-pot', 180, 'settles', 'unpack 180 180; stand-apart 180 201; settle-in 180 194'],
    ['mild', 'leafed-pot', 255, 'settles', 'unpack 255 255; stand-apart 255 276; settle-in 255 269'],
    ['mild', 'leafed-pot', 300, 'settles', 'unpack 300 300; stand-apart 300 321; settle-in 300 314'],
  ] as const)('%s: %s on day %i %s', (name, form, at, arrival, expected) => {
    const year = name === 'cold' ? coldYear() : mildYear();
    const own = plant(form, { kept: 'pot' });
    expect(arrivalOf(year, own, at)).toBe(arrival);
    expect(told(arrivalWindows(year, own, at, arrival, null)).join('; ')).toBe(expected);
  });
});

describe('the ends of the rules', () => {
  it('a tree that no cover brings through stays in its pot, in its first winter there', () => {
    const { window, firstWinterCounts, potOnly } = plantingOf(
      coldYear({ winterLowC: -40 }),
      plant('bare-root'),
      150,
      true,
    );
    expect([window, firstWinterCounts]).toEqual([null, 1]);
    expect(potOnly!.length).toBeGreaterThan(0);
  });

  it('a tree that falls asleep late is pruned in the two weeks before a week from the first buds', () => {
    // Buds may open on day 280: to day 273, from day 259.
    const late = coldYear({ dormant: { p10: 265, p50: 270, p90: 272 } });
    expect(told(groundWindows(late, 3)).filter(text => text.startsWith('prune'))).toEqual(['prune 259 273']);
  });
});
