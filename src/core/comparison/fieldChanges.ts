/** What differs between two states of one record, field by field: whatever is written, no kind of edit has to be named here first. */

import type { Figure } from '../records/common.ts';

/** Where in a record: keys, and the name of an item in a list of named things. */
export type FieldPath = readonly string[];

/**
 * One field that differs. A scalar, a figure, a list of scalars or, where an item of a list is new or gone, the whole item; `undefined`
 * on the side that lacks it.
 */
export interface FieldChange {
  path: FieldPath;
  from: unknown;
  to: unknown;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Whether a value is a horticultural figure, which is told as one thing. */
export function isFigure(value: unknown): value is Figure {
  return isObject(value) && 'low' in value && 'high' in value && 'standing' in value;
}

/** Keys that tell the items of a list apart, the first that all of them have. */
const naming = ['id', 'name', 'file', 'region', 'container', 'date', 'seconds', 'where', 'to', 'title'];

/** The items of a list by what they are called. Null where they have no name each. */
function byName(items: readonly unknown[]): Map<string, unknown> | null {
  if (items.length === 0 || !items.every(isObject)) return null;
  for (const key of naming) {
    const named = new Map(items.map(item => [String(item[key]), item]));
    if (items.every(item => item[key] !== undefined) && named.size === items.length) return named;
  }
  return null;
}

/** The keys of an object or of a list of named things; null for what is told as one. */
function partsOf(value: unknown): Map<string, unknown> | null {
  if (Array.isArray(value)) return byName(value);
  return isObject(value) && !isFigure(value) ? new Map(Object.entries(value)) : null;
}

function isSame(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}

/** An empty list of named things has no names to see, so it is taken for whatever the other side is. */
function alike(value: unknown, other: unknown): Map<string, unknown> | null {
  const isEmpty = Array.isArray(value) && value.length === 0;
  return isEmpty && Array.isArray(other) && byName(other) ? new Map() : partsOf(value);
}

/** The fields that differ, in the order of the later state. */
export function fieldChanges(from: unknown, to: unknown, path: FieldPath = []): FieldChange[] {
  if (isSame(from, to)) return [];
  const [before, after] = [alike(from, to), alike(to, from)];
  if (!before || !after) return [{ path, from: from ?? undefined, to: to ?? undefined }];
  const keys = new Set([...after.keys(), ...before.keys()]);
  const changes = [...keys].flatMap(key => {
    const [then, now] = [before.get(key), after.get(key)];
    if (then === undefined || now === undefined) {
      return isSame(then ?? null, now ?? null) ? [] : [{ path: [...path, key], from: then, to: now }];
    }
    return fieldChanges(then, now, [...path, key]);
  });
  // The same things in another order.
  return changes.length > 0 ? changes : [{ path, from, to }];
}
