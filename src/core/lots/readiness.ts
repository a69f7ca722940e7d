/** Which forms of a lot can be sold today, which open when, and which wait for somebody to look. */

import { type Day, type DayRange, later } from '../days.ts';
import type { Form, Reason } from '../records/common.ts';
import type { FormAnswer, FormState, Gate } from './answers.ts';
import { counted } from './gates/counted.ts';
import { dormant } from './gates/dormant.ts';
import type { SeasonGateRule } from './gates/gate.ts';
import { leafed } from './gates/leafed.ts';
import { lifting } from './gates/lifting.ts';
import { rooted } from './gates/rooted.ts';
import { sized } from './gates/sized.ts';
import { sound } from './gates/sound.ts';
import { weaned } from './gates/weaned.ts';
import type { Subject, YardDay } from './subject.ts';

/** The gates that hold in a season only, per form of sale. */
const seasonGates: Record<Form, readonly SeasonGateRule[]> = {
  'leafed-pot': [leafed],
  'dormant-pot': [dormant],
  'bare-root': [dormant, lifting],
};

/** Latest of the early days and of the late days of the gates that open later; null when none does. */
function openingOf(gates: readonly Gate[]): DayRange | null {
  return gates.reduce<DayRange | null>((latest, { range }) => {
    if (!range || !latest) return range ?? latest;
    return { from: later(latest.from, range.from), to: later(latest.to, range.to) };
  }, null);
}

/** The first season's end that comes before everything else is ready: what is true today will not be true then. */
function closedBefore(seasonal: readonly Gate[], opening: DayRange | null): Day | null {
  if (!opening) return null;
  const closings = seasonal.flatMap(({ closes }) =>
    closes !== null && closes <= opening.from ? [closes] : [],
  );
  return closings.length > 0 ? closings.reduce(later) : null;
}

function stateOf(gates: readonly Gate[]): FormState {
  const holds = (state: Gate['state']) => gates.some(gate => gate.state === state);
  if (holds('blocked')) return 'blocked';
  if (holds('opens')) return 'opens';
  return holds('look') ? 'look' : 'ready';
}

function reasonsFor(state: FormState, gates: readonly Gate[]): Reason[] {
  const of = (wanted: Gate['state']) =>
    gates.filter(gate => gate.state === wanted).flatMap(({ because }) => because);
  if (state === 'ready') return of('passed');
  return state === 'opens' ? [...of('opens'), ...of('look')] : of(state);
}

function answerForm(subject: Subject, today: YardDay, form: Form, lasting: readonly Gate[]): FormAnswer {
  const rules = seasonGates[form];
  let seasonal = rules.map(rule => rule(subject, today));
  const closed = closedBefore(seasonal, openingOf([...lasting, ...seasonal]));
  if (closed) seasonal = rules.map(rule => rule(subject, today, closed));
  const gates = [...lasting, ...seasonal];
  const state = stateOf(gates);
  return {
    form,
    state,
    range: state === 'opens' ? openingOf(gates) : null,
    gates,
    because: reasonsFor(state, gates),
  };
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
