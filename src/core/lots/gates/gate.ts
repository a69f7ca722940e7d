/** How a gate's answer is put together, and how its reasons are worded. */

import { type Day, type DayRange, dayInWords, rangeInWords } from '../../days.ts';
import type { Figure, Reason } from '../../records/common.ts';
import type { Gate, GateName, Span } from '../answers.ts';
import type { Expected } from '../milestones.ts';
import { loggedSince, type Outlook } from '../outlook.ts';
import type { SeasonSubject, Subject, YardDay } from '../subject.ts';

/** A rule that says whether one thing that sale depends on holds. */
export type GateRule = (subject: Subject, today: YardDay) => Gate;

/** A gate that holds in a season only; `notBefore` asks for the
 * first season that is not over on that later day, instead of the present state. */
export type SeasonGateRule = (subject: SeasonSubject, today: YardDay, notBefore?: Day) => Gate;

export function passed(name: GateName, because: Reason[], closes: Day | null = null): Gate {
  return { name, state: 'passed', range: null, closes, because };
}

export function opens(name: GateName, range: Span, because: Reason[], closes: Day | null = null): Gate {
  return { name, state: 'opens', range, closes, because };
}

export function blocked(name: GateName, because: Reason[]): Gate {
  return { name, state: 'blocked', range: null, closes: null, because };
}

/** `asks`: what to do on the next walk where that is more than to look. */
export function look(name: GateName, because: Reason[], closes: Day | null = null, asks?: string): Gate {
  const gate: Gate = { name, state: 'look', range: null, closes, because };
  return asks === undefined ? gate : { ...gate, asks };
}

export const seen = (text: string): Reason => ({ text, standing: 'seen' });
export const ours = (text: string): Reason => ({ text, standing: 'ours' });
export const modeled = (text: string): Reason => ({ text, standing: 'modeled' });

/** A figure as evidence: its words, its standing, and its source where it was published. */
export function byFigure(text: string, { standing, source }: Figure): Reason {
  return standing === 'published' ? { text, standing, source } : { text, standing };
}

/** `42 days`, `35 to 49 days`. */
export function daysInWords({ low, high }: Figure): string {
  const [from, to] = [Math.round(low), Math.round(high)];
  return from === to ? `${to} ${to === 1 ? 'day' : 'days'}` : `${from} to ${to} days`;
}

/** Where a forecast comes from: the weather years, and the yard's own log where it had begun by then. */
export function byWeather(
  { place, log }: Outlook,
  { since }: Pick<Expected, 'since'>,
  what: string,
  on: DayRange | Day,
): Reason {
  const logged = loggedSince(log, since).at(-1);
  const thermometer = logged ? ` and the yard's own thermometer up to ${dayInWords(logged.day)}` : '';
  const span = typeof on === 'string' || on.from === on.to ? null : on;
  const days = span
    ? `${rangeInWords(span)} in 8 of 10 years`
    : dayInWords(typeof on === 'string' ? on : on.from);
  return modeled(`${what} ${days}, going by the weather of ${place}${thermometer}.`);
}

/** `in 3 of 10 years`, `in fewer than 1 of 10 years`. */
export function shareInWords(share: number): string {
  const tenths = Math.round(share * 10);
  return tenths === 0 ? 'in fewer than 1 of 10 years' : `in ${tenths} of 10 years`;
}
