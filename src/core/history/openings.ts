/** Forms that became ready between two days on which something was noted, by the mere passing of time. */

import { type Day, daysBetween } from '../days.ts';
import type { Form } from '../records/common.ts';
import { firstDay, type LotPast } from './past.ts';

export type Openings = ReadonlyMap<Form, Day>;

const none: Openings = new Map();

/** The day that what a form waits for comes, up to `to`; followed on where another wait begins then. Null: not by then. */
function byWaiting(past: LotPast, form: Form, from: Day, to: Day): Day | null {
  let on = from;
  // Every wait ends on a later day, so there are no more of them than days.
  for (let waits = daysBetween(from, to); waits >= 0; waits -= 1) {
    const wait = past.waitingOn(on).get(form) ?? null;
    if (wait === 'ready') return on;
    if (wait === null || wait <= on || wait > to) return null;
    on = wait;
  }
  return null;
}

/**
 * The first day after `from` and up to `to` on which each form is ready that was not on `from`; nothing was noted after `from`. Where
 * the yard's thermometer has read on, the weather may have brought the day forward, so the last day is asked too.
 */
export function openingsBetween(past: LotPast, from: Day, to: Day): Openings {
  if (daysBetween(from, to) < 1 || past.stockOn(from).left === 0) return none;
  const found = new Map<Form, Day>();
  const readOn = past.todayOn(from).outlook !== past.todayOn(to).outlook;
  for (const [form, wait] of past.waitingOn(from)) {
    if (wait === 'ready' || wait === null) continue;
    const isReady = (on: Day) => past.waitingOn(on).get(form) === 'ready';
    const opened = byWaiting(past, form, from, to) ?? (readOn && isReady(to) ? to : null);
    if (opened) found.set(form, readOn ? firstDay(from, opened, isReady) : opened);
  }
  return found;
}
