/** What happened to one lot, newest first, worked out only as far back as somebody asks. */

import { addDays, type Day, dayInWords, daysBetween } from '../days.ts';
import type { FormAnswer } from '../lots/answers.ts';
import { counted } from '../lots/gates/counted.ts';
import { answerForms } from '../lots/readiness.ts';
import type { EventKind } from '../records/change.ts';
import type { Form, Reason } from '../records/common.ts';
import { type Openings, openingsBetween } from './openings.ts';
import type { LotPast } from './past.ts';

/** An event before it has its name. */
export interface LotEvent {
  kind: EventKind;
  lot: string;
  forms?: Form[];
  left: number;
  because: Reason[];
}

/**
 * A stream of history, newest first. A day says that nothing later than it is still to come; events are of the day before them in
 * the stream. So several streams can be merged without asking any of them further back than the others.
 */
export type History<T> = Generator<Day | T, void, undefined>;

/**
 * A form that was ready, went stale and is looked at again is no news; after so many days it is, since it is another season.
 * Standing: ours.
 */
export const READY_AGAIN_DAYS = 180;

function answersOn(past: LotPast, on: Day): FormAnswer[] {
  return answerForms(past.subjectOn(on), past.todayOn(on));
}

/** Each reason once. */
function distinct(because: readonly Reason[]): Reason[] {
  return [...new Map(because.map(reason => [reason.text, reason])).values()];
}

/** The reasons of the gates that a form has passed since an earlier day; all of the form's where it had passed them before. */
function whatChanged(past: LotPast, form: Form, before: Day, on: Day): Reason[] {
  const at = (day: Day) => answersOn(past, day).find(answer => answer.form === form)!;
  const [was, is] = [at(before), at(on)];
  const passedBefore = new Set(was.gates.filter(({ state }) => state === 'passed').map(({ name }) => name));
  const fresh = is.gates.filter(({ name }) => !passedBefore.has(name)).flatMap(({ because }) => because);
  return fresh.length > 0 ? fresh : is.because;
}

function becameReady(past: LotPast, forms: readonly Form[], before: Day, on: Day): LotEvent {
  return {
    kind: 'ready',
    lot: past.lot.id,
    forms: past.lot.forms.filter(form => forms.includes(form)),
    left: past.stockOn(on).free,
    because: distinct(forms.flatMap(form => whatChanged(past, form, before, on))),
  };
}

/**
 * Whether a form was ready not long before the noted day at an index, and since then at most wanted a look: then it is no news that it
 * is ready again.
 */
function wasReady(past: LotPast, form: Form, index: number): boolean {
  const { noted } = past;
  const on = noted[index]!;
  for (let back = index - 1; back >= 0; back -= 1) {
    const before = noted[back]!;
    const opened = openingsBetween(past, before, addDays(noted[back + 1]!, -1)).get(form);
    const ready = past.waitingOn(before).get(form) === 'ready' ? before : opened;
    if (daysBetween(ready ?? before, on) > READY_AGAIN_DAYS) return false;
    if (ready) return true;
    if (answersOn(past, before).find(answer => answer.form === form)!.state !== 'look') return false;
  }
  return false;
}

/** What the noted day at an index changed, against the noted day before it and what time has opened since. */
function changeAt(past: LotPast, index: number): LotEvent | null {
  const { lot, noted } = past;
  const [before, on] = [noted[index - 1]!, noted[index]!];
  const [was, is] = [past.stockOn(before), past.stockOn(on)];
  if (is.left === 0) {
    if (was.left === 0) return null;
    const { because } = counted(past.subjectOn(on), past.todayOn(on));
    return { kind: 'sold-out', lot: lot.id, left: 0, because };
  }
  const ready = lot.forms.filter(form => past.waitingOn(on).get(form) === 'ready');
  if (was.left === 0) {
    return { kind: 'back', lot: lot.id, forms: ready, left: is.free, because: is.because };
  }
  const news = ready.filter(form => !wasReady(past, form, index));
  return news.length === 0 ? null : becameReady(past, news, before, on);
}

/** Forms that opened by time alone, the newest day first. */
function* timeEvents(past: LotPast, from: Day, openings: Openings): History<LotEvent> {
  const days = [...new Set(openings.values())].sort().reverse();
  for (const on of days) {
    yield on;
    const forms = [...openings].flatMap(([form, opened]) => (opened === on ? form : []));
    yield becameReady(past, forms, from, on);
  }
}

/** The history of a lot up to a day. `mayHaveOpened` may spare the look at the days since it was last noted. */
export function* lotEvents(past: LotPast, asOf: Day, mayHaveOpened: boolean): History<LotEvent> {
  const { lot, noted } = past;
  let last = asOf;
  for (let index = noted.length - 1; index >= 0; index -= 1) {
    const on = noted[index]!;
    const sinceLast = index === noted.length - 1;
    if (last > on && (mayHaveOpened || !sinceLast)) {
      yield last;
      yield* timeEvents(past, on, openingsBetween(past, on, last));
    }
    yield on;
    last = addDays(on, -1);
    if (index === 0) break;
    const event = changeAt(past, index);
    if (event) yield event;
  }
  const text = `${lot.raised} ${lot.raised === 1 ? 'plant' : 'plants'} started on ${dayInWords(lot.started)}.`;
  yield { kind: 'opened', lot: lot.id, left: lot.raised, because: [{ text, standing: 'seen' }] };
}
