/** What a part of a guide depends on, and who sees it. */

import type { Form } from '../records/common.ts';
import type { PlaceClass } from '../records/cultivar.ts';
import { type FreezeThreshold, freezeThresholds } from '../records/freezeNames.ts';
import type { Guide } from '../records/guide.ts';
import {
  type CalendarCondition,
  type ClosedCondition,
  calendarConditions,
  closedConditions,
} from './guideVocabulary.ts';

type ValueCondition = ClosedCondition | 'species';
const valueConditions: readonly ValueCondition[] = [
  ...(Object.keys(closedConditions) as ClosedCondition[]),
  'species',
];

/** A reader meets a part when every condition holds; of the values of one condition any will do. */
export interface PartCondition {
  values: Partial<Record<ValueCondition, readonly string[]>>;
  /** The place has such a night in at least one year in ten. */
  freeze: FreezeThreshold | null;
  /** The place does not. */
  noFreeze: FreezeThreshold | null;
}

export const anyone: PartCondition = { values: {}, freeze: null, noFreeze: null };

/** Words of an attribute: spaces and commas part them. */
export function wordsOf(written: string): string[] {
  return written.split(/[\s,]+/).filter(word => word !== '');
}

/** The condition of a part whose attributes have been checked. */
export function conditionOf(attributes: Record<string, string | null | undefined>): PartCondition {
  const values: Partial<Record<ValueCondition, readonly string[]>> = {};
  for (const name of valueConditions) {
    const written = attributes[name];
    if (written) values[name] = wordsOf(written);
  }
  return {
    values,
    freeze: (attributes.freeze || null) as FreezeThreshold | null,
    noFreeze: (attributes['no-freeze'] || null) as FreezeThreshold | null,
  };
}

const coldness = (threshold: FreezeThreshold) => freezeThresholds.indexOf(threshold);

/** Of two thresholds the colder one: a place that reaches it reaches the other. */
function colder(a: FreezeThreshold | null, b: FreezeThreshold | null): FreezeThreshold | null {
  if (a === null || b === null) return a ?? b;
  return coldness(a) > coldness(b) ? a : b;
}

function warmer(a: FreezeThreshold | null, b: FreezeThreshold | null): FreezeThreshold | null {
  if (a === null || b === null) return a ?? b;
  return coldness(a) < coldness(b) ? a : b;
}

/** Both conditions at once, and the names of those that nobody can meet together. */
export function meet(
  outer: PartCondition,
  inner: PartCondition,
): { both: PartCondition; conflicts: string[] } {
  const values: Partial<Record<ValueCondition, readonly string[]>> = {};
  const conflicts: string[] = [];
  for (const name of valueConditions) {
    const [a, b] = [outer.values[name], inner.values[name]];
    const common = a && b ? a.filter(value => b.includes(value)) : (a ?? b);
    if (common === undefined) continue;
    values[name] = common;
    if (common.length === 0) conflicts.push(name);
  }
  const freeze = colder(outer.freeze, inner.freeze);
  const noFreeze = warmer(outer.noFreeze, inner.noFreeze);
  if (freeze !== null && noFreeze !== null && coldness(freeze) >= coldness(noFreeze))
    conflicts.push('freeze');
  return { both: { values, freeze, noFreeze }, conflicts };
}

/** What is known of a reader; null where it is not. */
export interface ReaderFacts {
  placeClass: PlaceClass | null;
  /** What the calendar of the species at the reader's place does. */
  calendar: Readonly<Record<CalendarCondition, string>> | null;
  /** Whether the reader's place has such a night in at least one year in ten. */
  hasFreeze: ((threshold: FreezeThreshold) => boolean) | null;
  species: string | null;
  form: string | null;
  stage: string | null;
  kept: string | null;
}

/** What a guide says of its readers before anything is known of one of them. */
export function knownOfReaders({ species, forms }: Pick<Guide, 'species' | 'forms'>): {
  species: string | null;
  form: Form | null;
} {
  return {
    species: species.length === 1 ? species[0]! : null,
    form: forms.length === 1 ? forms[0]! : null,
  };
}

function isOfCalendar(name: ValueCondition): name is CalendarCondition {
  return name in calendarConditions;
}

function factOf(reader: ReaderFacts, name: ValueCondition): string | null {
  if (name === 'winter' || name === 'season' || name === 'summer' || name === 'air')
    return reader.placeClass?.[name] ?? null;
  if (isOfCalendar(name)) return reader.calendar?.[name] ?? null;
  return reader[name];
}

/** `hidden` from a reader, or shown; `open` holds the conditions that nothing is known about, to be told in words. */
export type Sight = { hidden: true } | { hidden: false; open: PartCondition };

/** Whether a reader sees a part. */
export function sightOf({ values, freeze, noFreeze }: PartCondition, reader: ReaderFacts): Sight {
  const open: Partial<Record<ValueCondition, readonly string[]>> = {};
  for (const name of valueConditions) {
    const wanted = values[name];
    if (!wanted) continue;
    const fact = factOf(reader, name);
    if (fact === null) open[name] = wanted;
    else if (!wanted.includes(fact)) return { hidden: true };
  }
  const { hasFreeze } = reader;
  if (hasFreeze === null) return { hidden: false, open: { values: open, freeze, noFreeze } };
  if (freeze !== null && !hasFreeze(freeze)) return { hidden: true };
  if (noFreeze !== null && hasFreeze(noFreeze)) return { hidden: true };
  return { hidden: false, open: { values: open, freeze: null, noFreeze: null } };
}

/** Whether a condition asks for nothing. */
export function isOpenToAll({ values, freeze, noFreeze }: PartCondition): boolean {
  return Object.keys(values).length === 0 && freeze === null && noFreeze === null;
}
