/** What a guide may say to a reader with a place, read off the same calendar that stands beside it. */

import type { CareYear } from './careYear.ts';
import type { CalendarCondition, CoverAsked } from './guideVocabulary.ts';
import { dormantPlanting } from './planting.ts';
import { winterProtection } from './protection.ts';
import { potWinter } from './turningPoints.ts';

/** The cover of the first winter. */
function coverAsked({ species, winterLowC }: CareYear): CoverAsked {
  const { method } = winterProtection(species, 1, winterLowC);
  return method === 'pot-only' ? 'pot' : method;
}

/** The values of the conditions that rest on the calendar. */
export function calendarFacts(year: CareYear): Record<CalendarCondition, string> {
  return {
    pots: potWinter(year),
    'late-leaves': potWinter(year) === 'store' ? 'drop' : 'grow',
    'dormant-planting': dormantPlanting(year),
    cover: coverAsked(year),
  };
}
