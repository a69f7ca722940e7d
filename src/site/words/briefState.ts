/** How a form of a lot stands, in the few words that fit a cell of a list. */

import { type Day, dayParts } from '../../core/days.ts';
import type { FormAnswer } from '../../core/lots/answers.ts';
import type { FormSending } from '../../core/match/sendingSeason.ts';
import { shortMonthDay } from './yearDays.ts';

/** The month and day of a day to come, with its year where it lies more than a year ahead. */
function shortDay(on: Day, asOf: Day): string {
  const [a, b] = [dayParts(asOf), dayParts(on)];
  const words = shortMonthDay(on.slice(5));
  const yearAhead = b.year - a.year > 1 || (b.year > a.year && on.slice(5) >= asOf.slice(5));
  return yearAhead ? `${words} ${b.year}` : words;
}

/** Of what is ready: that alone where it leaves now or in a mild spell, else also from when it leaves. */
export function briefReady({ state, from }: FormSending, asOf: Day): string {
  if (state !== 'closed') return 'ready';
  return from === null ? 'ready, not sent' : `ready, sent from ${shortDay(from.monday, asOf)}`;
}

/** `ready`, `Nov 26 to Dec 12`, `check due`; null for what cannot be had. */
export function briefState(
  { state, range }: Pick<FormAnswer, 'state' | 'range'>,
  sending: FormSending,
  asOf: Day,
): string | null {
  if (state === 'ready') return briefReady(sending, asOf);
  if (state === 'look') return 'check due';
  if (state === 'blocked') return null;
  if (range === null) return 'later';
  if (range.to <= asOf) return 'any day';
  if (range.from <= asOf) return `by ${shortDay(range.to, asOf)}`;
  const [from, to] = [shortDay(range.from, asOf), shortDay(range.to, asOf)];
  return from === to ? `about ${from}` : `${from} to ${to}`;
}
