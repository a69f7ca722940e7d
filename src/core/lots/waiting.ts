/** Whether a form is ready on a day, or would be later if nobody did anything: the short answer, without reasons for people. */

import { type Day, later } from '../days.ts';
import type { Form } from '../records/common.ts';
import type { Gate } from './answers.ts';
import { counted } from './gates/counted.ts';
import type { GateRule, SeasonGateRule } from './gates/gate.ts';
import { rooted } from './gates/rooted.ts';
import { sized } from './gates/sized.ts';
import { sound } from './gates/sound.ts';
import { weaned } from './gates/weaned.ts';
import { seasonGates } from './readiness.ts';
import type { SeasonSubject, Subject, YardDay } from './subject.ts';

/** `ready`; the day by which all gates that wait for time alone have passed; null: somebody has to act or look first. */
export type Waiting = 'ready' | Day | null;

/** The gates that concern the lot whatever its form, those first that are soonest answered. */
const lotGates: readonly GateRule[] = [sound, counted, sized, weaned];

function gateWait({ state, range }: Gate): Waiting {
  if (state === 'passed') return 'ready';
  return state === 'opens' ? range!.to : null;
}

function both(one: Waiting, other: Waiting): Waiting {
  if (one === 'ready' || other === null) return other;
  return other === 'ready' || one === null ? one : later(one, other);
}

function seasonKey({ lot, species, signs }: SeasonSubject, { asOf }: YardDay): string {
  const { leaves, wood, where, outsideSince, lastOutside, leavesDownSince } = signs;
  const seen = [leaves, wood, where].map(sign => (sign ? `${sign.value} ${sign.on}` : ''));
  return `${asOf} ${species.id} ${lot.lifted} ${seen} ${outsideSince} ${lastOutside?.from} ${lastOutside?.to} ${leavesDownSince}`;
}

export type AskWaiting = (subject: Subject, today: YardDay) => ReadonlyMap<Form, Waiting>;

/**
 * What every form of a lot waits for, to be asked of many lots of one yard on many days. Stops at the first gate that time does not
 * open, and asks the seasons once for lots that are alike, so it costs a small part of the full answers. A wait for a day after
 * `horizon` is told as null.
 */
export function waitingBefore(horizon: Day): AskWaiting {
  const seasons = new Map<SeasonGateRule, Map<string, Waiting>>();
  const season = (rule: SeasonGateRule, subject: SeasonSubject, today: YardDay, key: string): Waiting => {
    const kept = seasons.get(rule) ?? new Map<string, Waiting>();
    seasons.set(rule, kept);
    let wait = kept.get(key);
    if (wait === undefined) {
      wait = gateWait(rule(subject, today));
      kept.set(key, wait);
    }
    return wait;
  };
  const within = (wait: Waiting) => (wait !== 'ready' && wait !== null && wait > horizon ? null : wait);

  return (subject, today) => {
    const key = seasonKey(subject, today);
    const waits = new Map<Form, Waiting>();
    for (const form of subject.lot.forms) {
      const gates = seasonGates[form].map(rule => season(rule, subject, today, key));
      waits.set(form, within(gates.reduce(both, 'ready')));
    }
    const someOpen = [...waits.values()].some(wait => wait !== null);
    let lasting: Waiting = someOpen ? 'ready' : null;
    for (const rule of lotGates) {
      if (lasting !== null) lasting = within(both(lasting, gateWait(rule(subject, today))));
    }
    for (const [form, wait] of waits) {
      if (wait === null) continue;
      const all = both(wait, lasting);
      waits.set(form, all && within(both(all, gateWait(rooted(subject, today, form)))));
    }
    return waits;
  };
}
