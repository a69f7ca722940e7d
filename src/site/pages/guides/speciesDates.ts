/** The days of a tree's year at a place, species by species: what the dates of guides and calendars hang on. */

import type { CareYear, SeasonDays } from '../../../core/care/careYear.ts';
import { monthDayOfSeason } from '../../../core/care/seasonClock.ts';
import { shortMonthDay } from '../../words/yearDays.ts';
import { speciesName } from '../stock/stock.ts';

export interface SpeciesDates {
  species: string;
  /** Days in words, in the order of the headings. */
  cells: string[];
}

const dayInShort = (at: number, firstDoy: number) => shortMonthDay(monthDayOfSeason(at, firstDoy));

function spanOf({ p10, p50, p90 }: SeasonDays, firstDoy: number): string {
  if (p10 === null) return 'hardly ever';
  if (p50 === null) return 'in few years';
  if (p90 === null || p90 === p10) return `about ${dayInShort(p50, firstDoy)}`;
  return `${dayInShort(p10, firstDoy)} to ${dayInShort(p90, firstDoy)}`;
}

/** The early end, which is the one to be ready for. */
function fromOf({ p10 }: SeasonDays, firstDoy: number): string {
  return p10 === null ? 'hardly ever' : dayInShort(p10, firstDoy);
}

export const speciesDateHeadings: readonly string[] = [
  'Leaves come down',
  'Asleep',
  'Pot outdoors at risk from',
  'Young wood at risk from',
  'Buds open',
];

/** A row for each species, in the order of their years. */
export function speciesDates(years: readonly CareYear[]): SpeciesDates[] {
  return years.map(({ species, firstDoy, evergreen, ...year }) => ({
    species: speciesName(species),
    cells: [
      evergreen ? 'need not' : spanOf(year.leafFall, firstDoy),
      evergreen ? 'rests in the coolest weeks' : spanOf(year.dormant, firstDoy),
      fromOf(year.potRiskFirst, firstDoy),
      fromOf(year.coldRiskFirst.young, firstDoy),
      evergreen ? 'after the coolest weeks' : spanOf(year.budbreak, firstDoy),
    ],
  }));
}
