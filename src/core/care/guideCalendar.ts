/** The tasks beside a guide where no plant has been named: what the guide is about, for a usual tree in the place. */

import { addDays, type Day } from '../days.ts';
import type { GuideKind } from '../records/guide.ts';
import { type CareTask, careCalendar, standingCalendar } from './calendar.ts';
import type { CareYear } from './careYear.ts';
import type { PlantInCare } from './plantInCare.ts';
import { dayOfSeason, seasonDayOf } from './seasonClock.ts';
import { tasksOfGuide } from './taskTable.ts';
import { potWinter, safeDay } from './turningPoints.ts';

/** A leafless tree is taken to arrive this long before the coldest weeks, days. Standing: ours. */
const ARRIVES_BEFORE_COLDEST_DAYS = 30;

function usual(year: CareYear, from: Day, rest: Pick<PlantInCare, 'form' | 'kept' | 'stage'>): PlantInCare {
  return { ...rest, species: year.species, arrives: from, potLiters: year.potLiters };
}

/** The next time that day of the season comes round. */
function nextDay(year: CareYear, from: Day, at: number): Day {
  const { season } = seasonDayOf(from, year.firstDoy);
  const thisSeason = dayOfSeason({ season, at }, year.firstDoy);
  return thisSeason >= from ? thisSeason : dayOfSeason({ season: season + 1, at }, year.firstDoy);
}

function tasksFor(kind: GuideKind, year: CareYear, from: Day): CareTask[] {
  const inPot = () =>
    standingCalendar(year, usual(year, from, { form: 'dormant-pot', kept: 'pot', stage: 'established' }))
      .tasks;
  const inGround = (winter: 1 | 3) =>
    standingCalendar(
      year,
      usual(year, from, { form: 'dormant-pot', kept: 'ground', stage: 'established' }),
      winter,
    ).tasks;
  switch (kind) {
    case 'arrival':
    case 'propagation':
      return [];
    case 'overwintering-pot':
    case 'growing-on':
      return inPot();
    case 'overwintering-ground':
      return inGround(1);
    case 'waking':
      return [...inPot(), ...inGround(1)];
    case 'pruning':
      return potWinter(year) === 'store' ? inPot() : inGround(3);
    case 'establishing': {
      const asleep = nextDay(year, from, year.coldestDay - ARRIVES_BEFORE_COLDEST_DAYS);
      const inLeaf = nextDay(year, from, safeDay(year) ?? year.coldestDay + ARRIVES_BEFORE_COLDEST_DAYS);
      return [
        ...careCalendar(
          year,
          usual(year, asleep, { form: 'bare-root', kept: 'ground', stage: 'first-winter' }),
        ).tasks,
        ...careCalendar(
          year,
          usual(year, inLeaf, { form: 'leafed-pot', kept: 'ground', stage: 'first-winter' }),
        ).tasks,
        ...inGround(1),
      ];
    }
  }
}

/** How far ahead a guide's calendar looks, days: every task of a year once, and the next winter. */
const GUIDE_DAYS = 548;

/**
 * Tasks of a guide's kind in a place over 18 months from a day, in order; each once a season. For a plant that is known use
 * `careCalendar`. Empty for guides that hang on the day a tree arrives or is propagated.
 */
export function guideCalendar(kind: GuideKind, year: CareYear, from: Day): CareTask[] {
  const until = addDays(from, GUIDE_DAYS);
  const seen = new Set<string>();
  return tasksFor(kind, year, from)
    .filter(({ name, id, range }) => {
      if (!tasksOfGuide[kind].includes(name) || range.from > until || seen.has(id)) return false;
      seen.add(id);
      return true;
    })
    .sort((a, b) =>
      a.range.from === b.range.from ? (a.id < b.id ? -1 : 1) : a.range.from < b.range.from ? -1 : 1,
    );
}
