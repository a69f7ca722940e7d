/** Weeks in which trees are sent, as the open files list them. */

import { z } from 'zod';
import { addDays, type Day } from '../core/days.ts';
import type { SendingRun } from '../core/match/answers.ts';
import { type Form, forms } from '../core/records/common.ts';
import { openDay } from './openFile.ts';

export const openSending = z.array(
  z.strictObject({
    form: z.enum(forms),
    from: openDay.describe('A Monday.'),
    to: openDay.describe('A Sunday.'),
    state: z
      .enum(['open', 'by-forecast'])
      .describe(
        'open: nine trips in ten keep to the limits; by-forecast: three of ten or more do, and parcels wait for a mild spell. In all other weeks none are sent.',
      ),
  }),
);

export type OpenSending = z.infer<typeof openSending>;

export interface FormRuns {
  form: Form;
  runs: readonly SendingRun[];
}

/** Runs by form and day; runs that follow each other in one state are one. */
export function openSendingOf(all: readonly FormRuns[]): OpenSending {
  return all.flatMap(({ form, runs }) => {
    const joined: OpenSending = [];
    for (const { from, to, state } of runs) {
      if (state === 'closed') continue;
      const before = joined.at(-1);
      if (before?.state === state && addDays(before.to as Day, 1) === from) before.to = to;
      else joined.push({ form, from, to, state });
    }
    return joined;
  });
}
