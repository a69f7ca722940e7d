/** Which forms of a lot can be sold today, which open when, and which wait for somebody to look. */

import { addDays, type Day, type DayRange, dayInWords, earlier, later } from '../days.ts';
import type { Form, Reason } from '../records/common.ts';
import type { FormAnswer, FormState, Gate, Span } from './answers.ts';
import { counted } from './gates/counted.ts';
import { dormantForLifting, dormantInPot } from './gates/dormant.ts';
import type { SeasonGateRule } from './gates/gate.ts';
import { leafed } from './gates/leafed.ts';
import { lifting } from './gates/lifting.ts';
import { rooted } from './gates/rooted.ts';
import { sized } from './gates/sized.ts';
import { sound } from './gates/sound.ts';
import { weaned } from './gates/weaned.ts';
import type { Subject, YardDay } from './subject.ts';

/** The gates that hold in a season only, per form of sale. */
export const seasonGates: Record<Form, readonly SeasonGateRule[]> = {
  'leafed-pot': [leafed],
  'dormant-pot': [dormantInPot],
  'bare-root': [dormantForLifting, lifting],
};

/** Latest of the early, the middle and the late days of the gates that open later; null when none does. */
function openingOf(gates: readonly Gate[]): Span | null {
  return gates.reduce<Span | null>((latest, { range }) => {
    if (!range || !latest) return range ?? latest;
    return {
      from: later(latest.from, range.from),
      likely: later(latest.likely, range.likely),
      to: later(latest.to, range.to),
    };
  }, null);
}

/** The earliest day on which a season may be over; null when none is known. */
function closingOf(seasonal: readonly Gate[]): Day | null {
  return seasonal.reduce<Day | null>((first, { closes }) => {
    if (!closes || !first) return closes ?? first;
    return earlier(first, closes);
  }, null);
}

function stateOf(lasting: readonly Gate[], seasonal: readonly Gate[]): FormState {
  const holds = (state: Gate['state']) => [...lasting, ...seasonal].some(gate => gate.state === state);
  if (holds('blocked')) return 'blocked';
  if (seasonal.some(({ state }) => state === 'look')) return 'look';
  if (holds('opens')) return 'opens';
  return holds('look') ? 'look' : 'ready';
}

function reasonsFor(state: FormState, gates: readonly Gate[]): Reason[] {
  const of = (wanted: Gate['state']) =>
    gates.filter(gate => gate.state === wanted).flatMap(({ because }) => because);
  if (state === 'ready') return of('passed');
  return state === 'opens' ? [...of('opens'), ...of('look')] : of(state);
}

/**
 * The gates of a season on the day everything else is ready: today's, unless that day lies ahead and either nobody knows the
 * present state or the present season will be over by then.
 */
function seasonGatesFor(subject: Subject, today: YardDay, form: Form, lasting: readonly Gate[]): Gate[] {
  const rules = seasonGates[form];
  const ahead = openingOf(lasting)?.from;
  const now = rules.map(rule => {
    const gate = rule(subject, today);
    return ahead && gate.state === 'look' ? rule(subject, today, ahead) : gate;
  });
  const opening = openingOf([...lasting, ...now]);
  const closes = closingOf(now);
  if (!opening || !closes || closes > opening.likely) return now;
  return rules.map(rule => rule(subject, today, opening.likely));
}

/** The days between which the form opens: cut at the end of its season where that comes first, and said so. */
function openingInSeason(gates: readonly Gate[]): { range: DayRange | null; cut: Reason[] } {
  const opening = openingOf(gates);
  if (!opening) return { range: null, cut: [] };
  const { from, to } = opening;
  const closes = closingOf(gates);
  if (!closes || closes > to || closes <= from) return { range: { from, to }, cut: [] };
  const text = `If it is not ready before ${dayInWords(closes)}, it waits for the next season.`;
  return { range: { from, to: addDays(closes, -1) }, cut: [{ text, standing: 'modeled' }] };
}

function answerForm(subject: Subject, today: YardDay, form: Form, lasting: readonly Gate[]): FormAnswer {
  const seasonal = seasonGatesFor(subject, today, form, lasting);
  const gates = [...lasting, ...seasonal];
  const state = stateOf(lasting, seasonal);
  const because = reasonsFor(state, gates);
  if (state !== 'opens') return { form, state, range: null, gates, because };
  const { range, cut } = openingInSeason(gates);
  return { form, state, range, gates, because: [...because, ...cut] };
}

/** The answer for every form in which a lot may be sold, in the lot's own order. */
export function answerForms(subject: Subject, today: YardDay): FormAnswer[] {
  const [count, weaning, size, health] = [
    counted(subject, today),
    weaned(subject, today),
    sized(subject, today),
    sound(subject, today),
  ];
  return subject.lot.forms.map(form =>
    answerForm(subject, today, form, [count, rooted(subject, today, form), weaning, size, health]),
  );
}
