/** The dates a guide may name, for one place and species: days of the season, or none where the place has no such day. */

import type { FreezeThreshold } from '../records/place.ts';
import type { CareYear, SeasonDays } from './careYear.ts';
import type { Chance, FreezeDateName, SpeciesDateName } from './guideVocabulary.ts';
import { monthDayOfSeason } from './seasonClock.ts';
import { lastFeed, safeDay } from './turningPoints.ts';

/** `MM-DD`, early and late end and the middle; null where the place has no such day. */
export interface GuideDays {
  early: string | null;
  middle: string | null;
  late: string | null;
}

function inMonthDays({ p10, p50, p90 }: SeasonDays, firstDoy: number): GuideDays {
  const text = (at: number | null) => (at === null ? null : monthDayOfSeason(at, firstDoy));
  return { early: text(p10), middle: text(p50), late: text(p90) };
}

const sameDay = (at: number | null): SeasonDays => ({ p10: at, p50: at, p90: at });

/** Days of a freeze at a level. */
export function freezeDays(year: CareYear, name: FreezeDateName, level: FreezeThreshold): GuideDays {
  const days = name === 'first-freeze' ? year.firstFreeze[level] : year.lastFreeze[level];
  return inMonthDays(days, year.firstDoy);
}

/** Days that depend on the species too. */
export function speciesDays(year: CareYear, name: SpeciesDateName): GuideDays {
  const { firstDoy } = year;
  switch (name) {
    case 'leaf-fall':
      return inMonthDays(year.leafFall, firstDoy);
    case 'dormant':
      return inMonthDays(year.dormant, firstDoy);
    case 'budbreak':
      return inMonthDays(year.evergreen ? sameDay(null) : year.budbreak, firstDoy);
    case 'safe-out':
      return inMonthDays(sameDay(safeDay(year)), firstDoy);
    case 'stop-feeding':
      return inMonthDays(sameDay(year.firstFreeze['32F'].p50 === null ? null : lastFeed(year)), firstDoy);
  }
}

/** The day on which the chance of a first freeze has risen to, or of a later one dropped to, this. */
export function dayAtChance(days: GuideDays, name: FreezeDateName, chance: Chance): string | null {
  if (chance === '5-in-10') return days.middle;
  const first = name === 'first-freeze';
  return (chance === '1-in-10') === first ? days.early : days.late;
}

/** Whether a place has such a night in at least one year in ten. */
export function hasFreezeAt(year: CareYear, level: FreezeThreshold): boolean {
  return year.firstFreeze[level].p10 !== null;
}
