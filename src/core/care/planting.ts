/** When a newly bought tree goes into the ground, or why it waits. Days of the season in which it arrives; past 364 in the next one. */

import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { Form, Reason } from '../records/common.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import type { DormantPlanting } from './guideVocabulary.ts';
import type { PlantInCare } from './plantInCare.ts';
import { type WinterNumber, winterProtection } from './protection.ts';
import { earlyFreeze, growthStarts, safeDay, warmerThan } from './turningPoints.ts';
import { modeled, resting, type Window } from './window.ts';

/** A tree in leaf is planted this long after it arrived, days: it settles in first. Standing: ours. */
const SETTLE_DAYS = 10;
/** A planting window is this long at most, days. Standing: ours. */
const PLANTING_DAYS = 42;
/** A late tree is planted at once only where its first winter leaves this much room, C. Standing: ours. */
const COMFORTABLE_MARGIN_C = 5;
/** A tree that comes at the start of winter comes this long before the coldest weeks, days. Standing: ours. */
const BEFORE_COLDEST_DAYS = 45;
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

/** Where no season is long enough for a tree to root before the freezes, it is planted in this many days, days. Standing: ours. */
const HURRIED_PLANTING_DAYS = 14;

interface LeafedStretch {
  from: number;
  /** The last day that leaves time to root. */
  latest: number;
  /** No growing season here is long enough for it. */
  hurried: boolean;
}

/** Springs looked at, by how many seasons they lie from the one of arrival: a tree is ready for the ground in its second season at the latest. */
const SPRINGS = [-1, 0, 1, 2] as const;

/** The first stretch between a safe day and the next early freeze with time enough for a tree that is ready on a day. */
function firstStretch(year: CareYear, ready: number, safe: number, freeze: number): LeafedStretch {
  const stretches = SPRINGS.map(k => {
    const spring = safe + k * DAYS_PER_YEAR;
    const nextFreeze = freeze + (k + 1) * DAYS_PER_YEAR;
    const from = afterTheHeat(year, Math.max(ready, spring));
    return { spring, from, latest: nextFreeze - careFigures.rootedBeforeWinter.low };
  });
  const roomy = stretches.find(({ from, latest }) => from <= latest);
  if (roomy !== undefined) return { from: roomy.from, latest: roomy.latest, hurried: false };
  // Between the freezes there is never time enough: the best that can be done is not to lose a day of it.
  const next = stretches.find(({ spring }) => spring + HURRIED_PLANTING_DAYS >= ready) ?? stretches.at(-1)!;
  const from = Math.max(ready, next.spring);
  return { from, latest: next.spring + HURRIED_PLANTING_DAYS, hurried: true };
}

/** A tree in leaf: after the safe day of a spring and well before the freezes of the next fall. */
function plantInLeaf(year: CareYear, ready: number): Window {
  const safe = safeDay(year);
  const freeze = earlyFreeze(year);
  const free = afterTheHeat(year, ready);
  const { from, latest, hurried } =
    safe === null || freeze === null
      ? { from: free, latest: free + PLANTING_DAYS, hurried: false }
      : firstStretch(year, ready, safe, freeze);
  const to = Math.max(from, Math.min(latest, beforeTheHeat(year, from, from + PLANTING_DAYS)));
  const wait = hurried
    ? 'As soon as the chance of a later freeze has dropped to 1 in 10: fewer than eight weeks are left here before the next may come, so cover it well in its first winter.'
    : 'After the chance of a later freeze has dropped to 1 in 10, once it has settled in, and eight weeks before the next freeze may come.';
  return {
    name: 'plant-out',
    from,
    to,
    trigger: safe === null ? 'Once it has settled in, on a cloudy day out of the great heat.' : wait,
    because: [
      modeled(
        safe === null
          ? 'Freezes are too rare here to wait for.'
          : 'A night of 32 F (0 C) comes later than the safe day in one year in ten.',
      ),
      resting('Roots take hold before winter.', careFigures.rootedBeforeWinter),
    ],
  };
}

/** When a leafless tree is planted here in the usual run of things: one that comes as the winter begins. */
export function dormantPlanting(year: CareYear): DormantPlanting {
  const { species, winterLowC, coldestDay } = year;
  if (winterProtection(species, 3, winterLowC).method === 'pot-only') return 'none';
  if (winterProtection(species, 1, winterLowC).method === 'pot-only' && safeDay(year) !== null) return 'none';
  const window = plantAsleep(year, coldestDay - BEFORE_COLDEST_DAYS, 'bare-root');
  if (window === null) return 'none';
  return window.from <= coldestDay ? 'winter' : 'spring';
}

/** A winter whose coldest month has this mean is mild, C: the whole of it is the season for planting. Standing: ours. */
const MILD_WINTER_C = 7;
/** A leafless tree is planted in fall only where its young wood has this much to spare, C: one winter zone. Standing: ours. */
const FALL_MARGIN_C = 5.6;

/**
 * Days from the coldest ones within which a leafless tree is planted, by form. Where winters are mild: Texas A&M AgriLife, late December to
 * February; UCCE Marin, December to January; a pot from November. Elsewhere common practice, no source: as the winter ends.
 */
const mildWindow = { 'bare-root': [-45, 45], 'dormant-pot': [-75, 45] } as const;
const coolWindow = { 'bare-root': [15, 75], 'dormant-pot': [45, 105] } as const;
/** After a frozen winter: days from the day the soil can be dug. */
const frozenWindow = { 'bare-root': [0, 42], 'dormant-pot': [14, 56] } as const;
/** A hardy tree in its pot is planted in fall from this long before the coldest days, days. */
const FALL_DAYS = 75;

/** Mean of the coldest month, C. */
function coldestMonthC({ meanC, coldestDay }: CareYear): number {
  const month = Array.from({ length: 31 }, (_, i) => (coldestDay - 15 + i + DAYS_PER_YEAR) % DAYS_PER_YEAR);
  return month.reduce((sum, at) => sum + (meanC[at] as number), 0) / month.length;
}

/** The days of a usual season on which a leafless tree of a form may be planted. */
function sleepingSeason(year: CareYear, form: 'bare-root' | 'dormant-pot'): { from: number; to: number } {
  const { species, leafFall, coldestDay, coldRiskLast, winterLowC } = year;
  const { middle } = growthStarts(year);
  const coldC = coldestMonthC(year);
  const workable = warmerThan(year, careFigures.soilWorkable.low) ?? coldestDay;
  const { marginC } = winterProtection(species, 1, winterLowC);
  if (coldC >= MILD_WINTER_C) {
    const [first, last] = mildWindow[form];
    const from = coldestDay + first;
    return { from, to: Math.max(from + SHORTEST_PLANTING_DAYS, Math.min(coldestDay + last, middle)) };
  }
  const fall = coldestDay - FALL_DAYS;
  const hardyInFall = form === 'dormant-pot' && coldC >= 0 && marginC >= FALL_MARGIN_C;
  const spell = coldC >= 0 ? coolWindow[form] : frozenWindow[form];
  const base = coldC >= 0 ? coldestDay : workable;
  const afterTheCold = marginC >= 0 ? workable : Math.max(workable, coldRiskLast.young.p90 ?? workable);
  const spring = Math.max(base + spell[0], afterTheCold);
  const to = Math.max(spring + SHORTEST_PLANTING_DAYS, Math.min(base + spell[1], middle));
  const from = hardyInFall
    ? Math.max(fall, leafFall.p50 ?? fall)
    : Math.min(spring, Math.max(afterTheCold, middle - 28));
  return { from, to };
}

/** A planting window is this long at least, days. Standing: ours. */
const SHORTEST_PLANTING_DAYS = 14;

/** The window for planting a leafless tree in the season it arrives; null where the soil or the cold leaves none. */
function plantAsleep(year: CareYear, ready: number, form: Form): Window | null {
  const { species, winterLowC } = year;
  const season = sleepingSeason(year, form === 'bare-root' ? 'bare-root' : 'dormant-pot');
  const standsWinter = winterProtection(species, 1, winterLowC).marginC >= 0;
  const mild = coldestMonthC(year) >= MILD_WINTER_C;
  const from = Math.max(ready, season.from);
  if (from > season.to) return null;
  return {
    name: 'plant-dormant',
    from,
    to: Math.min(season.to, from + PLANTING_DAYS),
    trigger: mild
      ? 'While it sleeps, through the cool months: in soil that can be dug and does not smear.'
      : standsWinter
        ? 'While it sleeps and the soil can be dug: neither frozen nor wet enough to smear.'
        : 'While it still sleeps, once the soil can be dug and the nights it cannot stand have passed.',
    because: [
      mild
        ? {
            text: 'Where winters are mild, leafless trees are planted in the cool months.',
            standing: 'published',
            source:
              'Texas A&M AgriLife 2022, late December to February; UCCE Marin 2024, December to January.',
          }
        : {
            text: 'A leafless tree is planted as the winter ends, before its buds open.',
            standing: 'practice',
            source: 'Common practice, no source.',
          },
      modeled(
        standsWinter
          ? 'Young wood of this species stands nine winters in ten here.'
          : 'Young wood of this species does not stand the middle of the winter here without cover.',
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
    const window = plantAsleep(year, plant.form === 'bare-root' ? at : at + 1, plant.form);
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
