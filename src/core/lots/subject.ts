/** What every rule about a lot is given: the lot with what was seen of it, and the day and yard it is judged in. */

import type { Day } from '../days.ts';
import { daysBetween } from '../days.ts';
import type { Lot } from '../records/lot.ts';
import type { PropagationFigures, Species } from '../records/species.ts';
import type { Yard } from '../records/yard.ts';
import type { LotSigns, StockCount } from './answers.ts';
import type { Outlook } from './outlook.ts';

export interface Subject {
  lot: Lot;
  species: Species;
  signs: LotSigns;
  stock: StockCount;
}

/** What the seasons act on: lots that are alike in this are in leaf, asleep and fit to be lifted alike. */
export interface SeasonSubject {
  lot: Pick<Lot, 'lifted'>;
  species: Species;
  signs: Pick<LotSigns, 'leaves' | 'wood' | 'where' | 'outsideSince' | 'lastOutside' | 'leavesDownSince'>;
}

/** One day in the yard. */
export interface YardDay {
  asOf: Day;
  yard: Yard;
  /** What the home place's weather lets expect. */
  outlook: Outlook;
}

/** Whether something seen on a day is recent enough to rely on. */
export function isFresh(on: Day, { asOf, yard }: YardDay): boolean {
  return daysBetween(on, asOf) <= yard.walkFreshDays;
}

/** Figures for the way the lot was raised; null where the species has none. */
export function propagationOf({ lot, species }: Subject): PropagationFigures | null {
  return species.propagation[lot.method] ?? null;
}

/** Whether a layer still hangs on its mother plant on a day. */
export function onMother(lot: Lot, asOf: Day): boolean {
  return lot.method === 'air-layer' && (lot.severed === null || lot.severed > asOf);
}

/** Day from which the plants had to live on their own: severed, else struck, divided or grafted. */
export function ownRootsSince(lot: Lot): Day {
  return lot.method === 'air-layer' && lot.severed !== null ? lot.severed : lot.started;
}

/** Newest potting on or before a day. */
export function pottingOn(lot: Lot, asOf: Day) {
  return lot.pottings.findLast(({ date }) => date <= asOf) ?? null;
}
