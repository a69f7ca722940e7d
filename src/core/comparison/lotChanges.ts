/** Lots opened, sold and gone, and which forms of them came ready. */

import type { Catalogue, LotEntry } from '../catalogue.ts';
import type { DayRange } from '../days.ts';
import type { FormState } from '../lots/answers.ts';
import type { Form } from '../records/common.ts';
import { pairsOf } from './pairs.ts';

export interface NamedLot {
  lot: string;
  /** Name of the cultivar, as customers read it. */
  cultivar: string;
}

interface OpenedLot extends NamedLot {
  left: number;
  /** Forms it can be had in at once. */
  ready: Form[];
}

export interface CountChange extends NamedLot {
  from: number;
  to: number;
  /** Plants sold, lost and returned in between; a count put right may make them negative. */
  sold: number;
  lost: number;
  returned: number;
}

interface FormChange extends NamedLot {
  form: Form;
  from: FormState;
  to: FormState;
}

/** A form that still opens, on other days than before. */
interface OpeningMove extends NamedLot {
  form: Form;
  from: DayRange;
  to: DayRange;
}

export interface LotChanges {
  opened: OpenedLot[];
  /** Lots whose records are gone, and their pages with them. */
  removed: NamedLot[];
  /** None left, where there were some. */
  soldOut: CountChange[];
  /** Some left again, where there were none. */
  back: CountChange[];
  /** Other counts that moved. */
  counts: CountChange[];
  /** Forms that came ready, of lots that were on the list. */
  ready: FormChange[];
  /** Forms that are no longer ready, sold-out lots left out. */
  notReady: FormChange[];
  /** Forms that are ready neither before nor after and wait for something else now, sold-out lots left out. */
  waiting: FormChange[];
  openings: OpeningMove[];
}

function named({ lot, cultivar }: LotEntry): NamedLot {
  return { lot: lot.id, cultivar: cultivar.name };
}

const readyForms = ({ forms }: LotEntry) =>
  forms.flatMap(({ form, state }) => (state === 'ready' ? form : []));

function countChange(then: LotEntry, now: LotEntry): CountChange {
  const grown = (key: 'sold' | 'lost' | 'returned') => now.stock[key] - then.stock[key];
  return {
    ...named(now),
    from: then.stock.left,
    to: now.stock.left,
    sold: grown('sold'),
    lost: grown('lost'),
    returned: grown('returned'),
  };
}

function sameRange(a: DayRange, b: DayRange): boolean {
  return a.from === b.from && a.to === b.to;
}

/** By id of the lot, as the catalogue has them. */
export function lotChanges(before: Catalogue, after: Catalogue): LotChanges {
  const earlier = new Set(before.lots.map(({ lot }) => lot.id));
  const later = new Set(after.lots.map(({ lot }) => lot.id));
  const changes: LotChanges = {
    opened: after.lots
      .filter(({ lot }) => !earlier.has(lot.id))
      .map(entry => ({ ...named(entry), left: entry.stock.left, ready: readyForms(entry) })),
    removed: before.lots.filter(({ lot }) => !later.has(lot.id)).map(named),
    soldOut: [],
    back: [],
    counts: [],
    ready: [],
    notReady: [],
    waiting: [],
    openings: [],
  };
  for (const { then, now } of pairsOf(before, after)) {
    if (then.stock.left !== now.stock.left) {
      const kind = now.stock.left === 0 ? 'soldOut' : then.stock.left === 0 ? 'back' : 'counts';
      changes[kind].push(countChange(then, now));
    }
    if (!now.soldOut) formChanges(then, now, changes);
  }
  return changes;
}

function formChanges(
  then: LotEntry,
  now: LotEntry,
  { ready, notReady, waiting, openings }: LotChanges,
): void {
  for (const answer of now.forms) {
    const earlier = then.forms.find(({ form }) => form === answer.form);
    const from = earlier?.state ?? 'blocked';
    const change = { ...named(now), form: answer.form, from, to: answer.state };
    if (answer.state === 'ready' && from !== 'ready') ready.push(change);
    if (answer.state !== 'ready' && from === 'ready') notReady.push(change);
    if (earlier && answer.state !== 'ready' && from !== 'ready' && answer.state !== from)
      waiting.push(change);
    if (answer.range && earlier?.range && !sameRange(answer.range, earlier.range)) {
      openings.push({ ...named(now), form: answer.form, from: earlier.range, to: answer.range });
    }
  }
}
