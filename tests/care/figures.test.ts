/** The words of tasks say the figures they rest on: whoever changes one has to change the other. */

import { describe, expect, it } from 'vitest';
import { arrivalWindows } from '../../src/core/care/arrival.ts';
import { careFigures } from '../../src/core/care/careFigures.ts';
import type { CareYear } from '../../src/core/care/careYear.ts';
import { groundWindows } from '../../src/core/care/groundWindows.ts';
import { plantedWater } from '../../src/core/care/plantedWater.ts';
import { plantingOf } from '../../src/core/care/planting.ts';
import { potWindows } from '../../src/core/care/potWindows.ts';
import { taskTable } from '../../src/core/care/taskTable.ts';
import { day } from '../../src/core/days.ts';
import type { Form } from '../../src/core/records/common.ts';
import { realSpecies } from './realPlaces.ts';
import { coldYear, mildYear, never } from './roundYear.ts';

const bought = (form: Form) => ({
  species: realSpecies('fig'),
  form,
  arrives: day('2026-10-01'),
  stage: 'first-winter' as const,
  kept: 'ground' as const,
  potLiters: 11.4,
});
const cold = coldYear();
const nowhere = Object.fromEntries(
  ['36F', '32F', '28F', '24F', '20F'].map(key => [key, never]),
) as CareYear['firstFreeze'];
const freezeless = mildYear({ firstFreeze: nowhere, lastFreeze: nowhere });

const windows = [
  ...potWindows(cold, 'half-ripe'),
  ...groundWindows(cold, 1),
  ...arrivalWindows(cold, bought('bare-root'), 95, 'stored', null),
  ...arrivalWindows(cold, bought('leafed-pot'), 300, 'settles', null),
  ...arrivalWindows(mildYear(), bought('dormant-pot'), 300, 'wakes', null),
  ...plantedWater(cold, { potLiters: 11.4 }, { from: 200, to: 230 }, true),
  plantingOf(cold, bought('leafed-pot'), 300, false).window!,
];
const wordsOf = (name: string) => {
  const found = windows.filter(window => window.name === name).map(({ trigger }) => trigger);
  return [...found, taskTable[name as keyof typeof taskTable].rule].join(' ');
};

describe('the words of tasks', () => {
  it.each<[keyof typeof careFigures, low: number, high: number, task: string, words: RegExp]>([
    ['storedCheckDays', 14, 21, 'inspect-stored', /Every two to three weeks/],
    ['storedWaterDays', 21, 35, 'water-stored', /Every three to five weeks/],
    ['regrowth', 7, 14, 'wake', /one to two weeks/],
    ['regrowth', 7, 14, 'wake-on-arrival', /one to two weeks/],
    ['hardening', 7, 14, 'harden', /one to two weeks/],
    ['soak', 1, 6, 'soak-roots', /1 to 6 hours/],
    ['coolAfterPotting', 14, 28, 'pot-up', /two to four weeks/],
    ['standApart', 14, 21, 'stand-apart', /two to three weeks/],
    ['rootedBeforeWinter', 56, 56, 'plant-out', /eight weeks before/],
    ['stopFeeding', 70, 70, 'stop-feeding', /Ten weeks before/],
    ['mulchAfterFreeze', 30, 45, 'mulch', /30 to 45 days after the first freeze/],
    ['mulchDepthCm', 7, 10, 'mulch', /7 to 10 cm/],
    ['plantedWater', 2, 3, 'water-new', /2 to 3 gallons for each inch/],
    ['rootingWeeks', 12, 12, 'water-new', /twelfth week/],
    ['secondSummerWaterDays', 10, 14, 'water-second-summer', /ten to fourteen days/],
    ['sleepingWaterDays', 14, 28, 'water-asleep', /two to four weeks/],
    ['wakeAtMean', 8, 8, 'wake', /mean of 8 C \(46 F\)/],
    ['clothGain', 1, 2, 'cover-new-leaves', /1 to 2 degrees C/],
    ['storedWaterShare', 0.1, 0.1, 'water-stored', /about 1 qt \(1\.1 L\)/],
    ['forcing', 31, 60, 'wake', /one to two months at 50 F/],
  ])('say that %s is %f to %f', (name, low, high, task, words) => {
    expect([careFigures[name].low, careFigures[name].high]).toEqual([low, high]);
    expect(wordsOf(task)).toMatch(words);
  });

  it('rest on one figure where there is one', () => {
    for (const name of ['lateArrival', 'soilWorkable', 'evergreenAbove'] as const) {
      expect(careFigures[name].low).toBe(careFigures[name].high);
    }
    // Bare-root stock: USDA Forest Service, hardwood seedling handling, 33 to 40 F; to 45 F common practice, no source.
    expect([careFigures.stores.low, careFigures.stores.high]).toEqual([0.6, 7.2]);
  });

  it('speak of freezes only where there are any', () => {
    const { window } = plantingOf(freezeless, bought('leafed-pot'), 60, false);
    expect(window!.trigger).toMatch(/^Once it has settled in/);
    expect(window!.because[0]!.text).toMatch(/too rare here/);
    const frosty = plantingOf(cold, bought('leafed-pot'), 300, false).window!;
    expect(frosty.trigger).toMatch(/^After the chance of a later freeze/);
    expect(frosty.because[0]!.text).toMatch(/32 F/);
  });
});
