/**
 * How trees of each form leave the yard in the coming week, by the weather at the yard's own end: no destination can do better. Lists say it beside
 * what is ready, since a lot that is ready in January still waits for a mild spell.
 */

import type { Catalogue } from '../../core/catalogue.ts';
import { findWinters, freezeOdds } from '../../core/climate/freezes.ts';
import { figuresOfPlace } from '../../core/climate/place.ts';
import { weatherYears } from '../../core/climate/weatherYears.ts';
import type { SendingRun, SendingState, SendingWeek } from '../../core/match/answers.ts';
import { tripEndOf } from '../../core/match/destination.ts';
import { nextSendingDay, sendingRuns, sendingWeeks } from '../../core/match/sending.ts';
import { type Form, forms } from '../../core/records/common.ts';
import { memoize } from '../memo.ts';

/** Enough for the share of a week; drawing them costs a few milliseconds. */
const SEASONS = 400;

export interface SentNow {
  state: SendingState;
  /** Share of trips that keep to the limits at the yard's own end. */
  share: number;
  /** The first better week where it is closed; null where there is none. */
  from: { state: SendingState; monday: SendingWeek['monday'] } | null;
}

type Yard = Pick<Catalogue, 'home' | 'yard' | 'asOf'>;

/** The coming weeks of each form at the yard's own end. */
const weeksAtHome = memoize(({ home, yard, asOf }: Yard): Record<Form, SendingWeek[]> => {
  const years = weatherYears(figuresOfPlace(home), SEASONS);
  const freeze = freezeOdds(findWinters(years), 32);
  const end = tripEndOf(home.name, years, freeze, yard.sending);
  const from = nextSendingDay(yard.sending, asOf);
  return Object.fromEntries(
    forms.map(form => [form, sendingWeeks(end, end, form, yard.sending, from)]),
  ) as Record<Form, SendingWeek[]>;
});

/** How each form leaves in the coming week. */
export const sentNow = memoize((all: Yard): Record<Form, SentNow> => {
  const weeks = weeksAtHome(all);
  return Object.fromEntries(
    forms.map(form => {
      const { state, share } = weeks[form][0] as SendingWeek;
      const better = state === 'closed' && weeks[form].find(week => week.state !== 'closed');
      const from = better ? { state: better.state, monday: better.monday } : null;
      return [form, { state, share, from } satisfies SentNow];
    }),
  ) as Record<Form, SentNow>;
});

/** Weeks in which each form leaves the yard, by the weather at its own end. */
export function runsFromHome(all: Yard): { form: Form; runs: SendingRun[] }[] {
  const weeks = weeksAtHome(all);
  return forms.map(form => ({ form, runs: sendingRuns(weeks[form]) }));
}
