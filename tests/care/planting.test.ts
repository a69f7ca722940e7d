/** Planting where the summer is too hot, where the season is too short and where first-winter wood is too tender; each day worked out beside it. */
import { describe, expect, it } from 'vitest';
import type { CareYear } from '../../src/core/care/careYear.ts';
import type { PlantInCare } from '../../src/core/care/plantInCare.ts';
import { plantingOf } from '../../src/core/care/planting.ts';
import { day } from '../../src/core/days.ts';
import type { Form } from '../../src/core/records/common.ts';
import { fig, figure } from '../match/places.ts';
import { about, coldYear, mildYear, never, sawtooth } from './roundYear.ts';

const nowhere = Object.fromEntries(
  ['36F', '32F', '28F', '24F', '20F'].map(key => [key, never]),
) as CareYear['firstFreeze'];
const plant = (form: Form, species = fig): PlantInCare => ({
  species,
  form,
  arrives: day('2026-10-01'),
  stage: 'first-winter',
  kept: 'ground',
  potLiters: 11.4,
});
const days = (year: CareYear, form: Form, at: number, asleep = false, species = fig) => {
  const { window } = plantingOf(year, plant(form, species), at, asleep);
  return window && [window.from, window.to];
};

describe('in the heat', () => {
  // Hottest on day 350 and 38 C then: nothing is planted from 45 days before it (305) to 45 after it (395, or 30 of the next season).
  const desert = (over: Partial<CareYear> = {}) =>
    mildYear({ hottestDay: 350, firstFreeze: nowhere, lastFreeze: nowhere, ...over });

  it('a tree in leaf waits until the hottest weeks are over, wherever in them it is ready', () => {
    // Ready ten days after it came; six weeks to plant, and none of them in the heat.
    expect(days(desert(), 'leafed-pot', 200)).toEqual([210, 252]);
    expect(days(desert(), 'leafed-pot', 270)).toEqual([280, 305]);
    expect(days(desert(), 'leafed-pot', 295)).toEqual([305, 305]);
    expect(days(desert(), 'leafed-pot', 296)).toEqual([395, 437]);
    expect(days(desert(), 'leafed-pot', 350)).toEqual([395, 437]);
    // Early in a season the heat is that of the summer before: over on day 350 + 45 - 365.
    expect(days(desert(), 'leafed-pot', 10)).toEqual([30, 72]);
    expect(days(desert(), 'leafed-pot', 19)).toEqual([30, 72]);
    expect(days(desert(), 'leafed-pot', 20)).toEqual([30, 72]);
    expect(days(desert(), 'leafed-pot', 21)).toEqual([31, 73]);
  });

  it('is too great from a usual high of 35 C on', () => {
    expect(days(desert({ hottestHighC: 35 }), 'leafed-pot', 296)).toEqual([395, 437]);
    expect(days(desert({ hottestHighC: 34.9 }), 'leafed-pot', 296)).toEqual([306, 348]);
    expect(days(desert({ hottestHighC: 34.9 }), 'leafed-pot', 270)).toEqual([280, 322]);
  });
});

describe('where the season is short', () => {
  // The last freeze of a late year on day 290, the first of an early one on 45 of the next season, 410: 120 days, of which a tree needs 56.
  const short = (first: number) =>
    coldYear({ firstFreeze: { ...coldYear().firstFreeze, '32F': about(first + 10, 10) } });

  it('a tree has to be in eight weeks before the first freeze of an early year', () => {
    expect(days(short(45), 'leafed-pot', 330)).toEqual([340, 354]);
    expect(days(short(45), 'leafed-pot', 344)).toEqual([354, 354]);
    // A day later it waits for the next spring.
    expect(days(short(45), 'leafed-pot', 345)).toEqual([290 + 365, 290 + 365 + 42]);
  });

  it('and where there are never eight weeks it goes in within two weeks of the safe day', () => {
    // First freeze on day -20, that is 345 of the season before: 55 days after the safe day.
    const { window } = plantingOf(short(-20), plant('leafed-pot'), 250, false);
    expect([window!.from, window!.to]).toEqual([290, 304]);
    expect(window!.trigger).toMatch(/fewer than eight weeks are left here/);
    // Fifty-six days are enough, and leave no choice.
    const enough = plantingOf(short(-19), plant('leafed-pot'), 250, false).window!;
    expect([enough.from, enough.to]).toEqual([290, 290]);
    expect(enough.trigger).toMatch(/eight weeks before the next freeze may come/);
    // It settles in for ten days, and what is ready after the two weeks waits a year.
    expect(days(short(-20), 'leafed-pot', 285)).toEqual([295, 304]);
    expect(days(short(-20), 'leafed-pot', 294)).toEqual([304, 304]);
    expect(days(short(-20), 'leafed-pot', 295)).toEqual([290 + 365, 304 + 365]);
  });
});

describe('a tree too tender for its first winter', () => {
  // One winter in ten reaches -18 C: 13 C short of first-winter wood (-5), which no cover makes up for; 6 C short of established wood (-12), which a cage does.
  const tender = { ...fig, dormantEstablishedC: figure(-12), dormantFirstWinterC: figure(-5) };
  const year = coldYear({ winterLowC: -18 }, tender);

  it('spends it in its pot, and stands in the ground for what counts as its second', () => {
    for (const [at, from] of [
      [100, 290],
      [180, 290],
      // What comes after the coldest days has its first winter still before it.
      [181, 655],
      [300, 655],
    ] as const) {
      const found = plantingOf(year, plant('dormant-pot', tender), at, true);
      expect([found.window!.from, found.firstWinterCounts, found.potOnly]).toEqual([from, 2, null]);
      expect(found.window!.trigger).toMatch(/^After its first winter, spent in the pot\./);
    }
  });

  it('and stays there for good where established wood is short of more than any cover is worth', () => {
    const worse = (lowC: number) =>
      plantingOf(coldYear({ winterLowC: lowC }, tender), plant('dormant-pot', tender), 100, true);
    expect(worse(-24).potOnly).toBeNull();
    expect(worse(-24.1).potOnly).not.toBeNull();
  });
});

describe('a tree in leaf that comes late', () => {
  // The first freeze of an early year is on day 70: late is what comes in the 42 days before it, from day 29 to 69.
  const year = (spareC: number) => coldYear({ winterLowC: -5 + spareC });

  it('waits for spring unless its first winter leaves 5 C to spare', () => {
    expect(days(year(4.9), 'leafed-pot', 29)).toEqual([290, 332]);
    expect(days(year(4.9), 'leafed-pot', 69)).toEqual([290, 332]);
    expect(days(year(5), 'leafed-pot', 29)![0]).toBe(290);
    const longFall = (spareC: number) =>
      coldYear({ winterLowC: -5 + spareC, lastFreeze: nowhere, firstFreeze: nowhere });
    expect(days(longFall(5), 'leafed-pot', 29)).toEqual([39, 81]);
  });
});

describe('a leafless tree', () => {
  it('in a winter whose coldest month is 7 C or warmer is planted all winter, else as it ends', () => {
    // The means run straight to their lowest on day 180, so that the 31 days around it lie about 1 C above it on average.
    const at = (coldC: number) =>
      plantingOf(coldYear({ meanC: sawtooth(coldC, 30), winterLowC: -4 }), plant('bare-root'), 100, true)
        .window!;
    expect(at(6.5).trigger).toMatch(/through the cool months/);
    expect(at(6.5).from).toBe(135);
    expect(at(5.5).trigger).not.toMatch(/through the cool months/);
    expect(at(5.5).from).toBeGreaterThanOrEqual(195);
  });

  it('goes in when the soil can be dug, 4 C, after a frozen winter', () => {
    // 30 - 40 x (365 - at) / 185 is 4 on day 245: bare roots then, a pot two weeks after.
    const frozen = coldYear({
      meanC: sawtooth(-10, 30),
      winterLowC: -4,
      coldRiskLast: { young: never, established: never },
    });
    expect(days(frozen, 'bare-root', 100, true)).toEqual([245, 287]);
    expect(days(frozen, 'dormant-pot', 100, true)![0]).toBe(259);
  });
});
