/** Where the sending year stands: which forms leave now, which later and from when. */

import type { Day } from '../days.ts';
import { type Form, forms } from '../records/formNames.ts';
import type { SendingState } from './answers.ts';

/** How one form leaves in the coming week, and the first better week where that is closed; null where none is in sight. */
export interface FormSending {
  state: SendingState;
  from: { state: SendingState; monday: Day } | null;
}

/** Forms that stand alike. */
export interface SendingGroup extends FormSending {
  forms: Form[];
}

/** Soonest first: sent every week, by forecast, from a day, not in sight. */
function rank({ state, from }: FormSending): string {
  if (state !== 'closed') return state === 'open' ? '0' : '1';
  return from === null ? '3' : `2 ${from.monday}`;
}

/** All forms, those that stand alike together, soonest first. */
export function sendingGroups(sending: Readonly<Record<Form, FormSending>>): SendingGroup[] {
  const groups = new Map<string, SendingGroup>();
  for (const form of forms) {
    const { state, from } = sending[form];
    // A better week still to come matters only where this one is closed.
    const later = state === 'closed' ? from : null;
    const key = `${rank({ state, from: later })} ${later?.state ?? ''}`;
    const group = groups.get(key) ?? { state, from: later, forms: [] };
    group.forms.push(form);
    groups.set(key, group);
  }
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, group]) => group);
}

/** The next day on which any form leaves, where none leaves now; null where one does, or none will in sight. */
export function nextSending(sending: Readonly<Record<Form, FormSending>>): Day | null {
  const [first] = sendingGroups(sending);
  return first?.state === 'closed' ? (first.from?.monday ?? null) : null;
}
