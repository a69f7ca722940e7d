/** When a newly bought tree goes into the ground, or why it waits. Days of the season in which it arrives; past 364 in the next one. */

import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { Reason } from '../records/common.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import type { PlantInCare } from './plantInCare.ts';
import { type WinterNumber, winterProtection } from './protection.ts';
import { earlyFreeze, growthStarts, safeDay, warmerThan } from './turningPoints.ts';
import { modelled, resting, type Window } from './window.ts';

/** A tree in leaf is planted this long after it arrived, days: it settles in first. Standing: ours. */
const SETTLE_DAYS = 10;
/** A planting window is this long at most, days. Standing: ours. */
const PLANTING_DAYS = 42;
/** A late tree is planted at once only where its first winter leaves this much room, C. Standing: ours. */
const COMFORTABLE_MARGIN_C = 5;
/** Around the hottest weeks nothing is planted where the usual high reaches this, C. Standing: ours. */
const TOO_HOT_TO_PLANT_C = 35;
const HALF_HOT_SPELL_DAYS = 45;

export interface Planting {
  window: Window | null;
  /** Winters it will have stood in the ground at its first one there: 2 when it was grown on in a pot for its tender first winter. */
  firstWinterCounts: WinterNumber;
  /** Why it stays in a pot for good; null when it is planted. */
  potOnly: Reason[] | null;
}

/** Whether a day of the season lies in heat in which nothing is planted; if so, the day it ends. */
function afterTheHeat({ hottestDay, hottestHighC }: CareYear, at: number): number {
  if (hottestHighC < TOO_HOT_TO_PLANT_C) return at;
  for (const summer of [hottestDay - DAYS_PER_YEAR, hottestDay, hottestDay + DAYS_PER_YEAR]) {
    if (at > summer - HALF_HOT_SPELL_DAYS && at < summer + HALF_HOT_SPELL_DAYS)
      return summer + HALF_HOT_SPELL_DAYS;
  }
  return at;
}

function beforeTheHeat({ hottestDay, hottestHighC }: CareYear, from: number, to: number): number {
  if (hottestHighC < TOO_HOT_TO_PLANT_C) return to;
  const starts = [hottestDay, hottestDay + DAYS_PER_YEAR].map(summer => summer - HALF_HOT_SPELL_DAYS);
  return Math.min(to, ...starts.filter(start => start >= from));
}

/** A tree in leaf: after the safe day of a spring and well before the freezes of the next fall. */
function plantInLeaf(year: CareYear, ready: number): Window {
  const safe = safeDay(year);
  const freeze = earlyFreeze(year);
  const lead = careFigures.rootedBeforeWinter.low;
  const heat = (at: number) => afterTheHeat(year, at);
  let from = heat(ready);
  let latest = from + PLANTING_DAYS;
  if (safe !== null && freeze !== null) {
    // Spring after spring until there is one with time enough.
    for (let spring = safe - DAYS_PER_YEAR; ; spring += DAYS_PER_YEAR) {
      const nextFreeze = freeze + DAYS_PER_YEAR + (spring - safe);
      from = heat(Math.max(ready, spring));
      latest = nextFreeze - lead;
      if (from <= latest) break;
    }
  }
  const to = Math.max(from, Math.min(latest, beforeTheHeat(year, from, from + PLANTING_DAYS)));
  return {
    name: 'plant-out',
    from,
    to,
    trigger:
      safe === null
        ? 'Once it has settled in, on a dull day out of the great heat.'
        : 'After the chance of a later freeze has dropped to 1 in 10, once it has settled in, and eight weeks before the next freeze may come.',
    because: [
      modelled(
        safe === null
          ? 'Freezes are too rare here to wait for.'
          : 'A night of 32 F (0 C) comes later than the safe day in one year of ten.',
      ),
      resting('Roots take hold before winter.', careFigures.rootedBeforeWinter),
    ],
  };
}

/** The window for planting a leafless tree in the season it arrives; null where the soil or the cold leaves none. */
function plantAsleep(year: CareYear, ready: number): Window | null {
  const { species, dormant, leafFall, coldestDay, meanC, coldRiskLast, winterLowC } = year;
  const { early, middle } = growthStarts(year);
  const workable = warmerThan(year, careFigures.soilWorkable.low) ?? coldestDay;
  const soilNeverFreezes = (meanC[coldestDay] as number) >= careFigures.soilWorkable.low;
  const standsWinter = winterProtection(species, 1, winterLowC).marginC >= 0;
  const asleep = dormant.p50 ?? leafFall.p50 ?? coldestDay - 30;
  const opens =
    standsWinter && soilNeverFreezes
      ? Math.min(asleep, coldestDay)
      : Math.max(workable, coldRiskLast.young.p90 ?? workable);
  const to = soilNeverFreezes ? early - 7 : Math.max(opens + 14, middle);
  const from = Math.max(ready, opens);
  if (from > to) return null;
  return {
    name: 'plant-dormant',
    from,
    to: Math.min(to, from + PLANTING_DAYS),
    trigger: standsWinter
      ? 'While it sleeps and the soil can be dug: neither frozen nor wet enough to smear.'
      : 'While it still sleeps, once the soil can be dug and the nights it cannot stand have passed.',
    because: [
      modelled(
        standsWinter
          ? 'Young wood of this species stands nine winters of ten here.'
          : 'Young wood of this species does not stand the middle of the winter here.',
      ),
      resting('What it stands in its first winter in the ground.', species.dormantFirstWinterC),
    ],
  };
}

/**
 * Planting of a tree that is to live in the ground. `at` is the day of the season on which it arrives, `asleep` whether it is leafless
 * and stays so until spring.
 */
export function plantingOf(year: CareYear, plant: PlantInCare, at: number, asleep: boolean): Planting {
  const { species, winterLowC } = year;
  const established = winterProtection(species, 3, winterLowC);
  if (established.method === 'pot-only') {
    return { window: null, firstWinterCounts: 1, potOnly: established.because };
  }
  const first = winterProtection(species, 1, winterLowC);
  const spring = safeDay(year);
  const tooTender = first.method === 'pot-only' && spring !== null;
  if (asleep && !tooTender) {
    const window = plantAsleep(year, plant.form === 'bare-root' ? at : at + 1);
    if (window !== null) return { window, firstWinterCounts: 1, potOnly: null };
  }
  const freeze = earlyFreeze(year);
  // Late in the season a tree that cannot stand the winter well is kept in its pot until spring.
  const late = freeze !== null && at < freeze && at > freeze - careFigures.lateArrival.low;
  const ready =
    tooTender && spring !== null
      ? spring + (at > year.coldestDay ? DAYS_PER_YEAR : 0)
      : late && first.marginC < COMFORTABLE_MARGIN_C && spring !== null
        ? spring
        : at + SETTLE_DAYS;
  const window = plantInLeaf(year, ready);
  if (tooTender) {
    window.trigger = `After its first winter, spent in the pot. ${window.trigger}`;
    window.because = [...window.because, ...first.because];
  }
  return { window, firstWinterCounts: tooTender ? 2 : 1, potOnly: null };
}
