/** Finds the part of a schema that a path leads to, to say what should stand there. */

import type { z } from 'zod';
import type { KeyPath } from './problem.ts';

/** The few properties of zod's schemas that are looked at. */
interface SchemaPart {
  description?: string | undefined;
  options?: readonly unknown[];
  minValue?: number | null;
  maxValue?: number | null;
  isInt?: boolean;
  minLength?: number | null;
  maxLength?: number | null;
  _zod: {
    def: {
      type: string;
      shape?: Record<string, SchemaPart>;
      element?: SchemaPart;
      innerType?: SchemaPart;
      valueType?: SchemaPart;
      items?: readonly SchemaPart[];
      options?: readonly SchemaPart[];
    };
  };
}

/** A schema without `optional` and `nullable` around it. */
function bare(part: SchemaPart): SchemaPart {
  let inner = part;
  while (inner._zod.def.innerType) inner = inner._zod.def.innerType;
  return inner;
}

function step(part: SchemaPart, key: string | number): SchemaPart | undefined {
  const { shape, element, valueType, items } = bare(part)._zod.def;
  if (shape) return Object.hasOwn(shape, key) ? shape[key] : undefined;
  if (items) return items[Number(key)];
  return element ?? valueType;
}

/** What a schema says about the value at a path. */
export interface Wanted {
  type: 'text' | 'number' | 'whole' | 'list' | 'group' | 'word' | 'figure' | 'other';
  /** What the grower is told about the key. */
  description: string;
  /** Keys a group may have. */
  keys: string[];
  /** Those of them that cannot be left out. */
  needed: string[];
  /** Words a value may be. */
  words: string[];
  low: number | null;
  high: number | null;
  longest: number | null;
}

const types: Record<string, Wanted['type']> = {
  string: 'text',
  number: 'number',
  array: 'list',
  tuple: 'list',
  object: 'group',
  record: 'group',
  enum: 'word',
  union: 'figure',
};

function finite(value: number | null | undefined): number | null {
  return value !== undefined && value !== null && Math.abs(value) < Number.MAX_SAFE_INTEGER ? value : null;
}

/** What should stand at a path of a record; null when the schema knows no such path. */
export function wantedAt(schema: z.ZodType, path: KeyPath): Wanted | null {
  let part: SchemaPart | undefined = schema as unknown as SchemaPart;
  for (const key of path) part = part && step(part, key);
  if (!part) return null;
  const inner = bare(part);
  const { type, shape } = inner._zod.def;
  return {
    type: type === 'number' && inner.isInt ? 'whole' : (types[type] ?? 'other'),
    description: part.description ?? inner.description ?? '',
    keys: Object.keys(shape ?? {}),
    needed: Object.entries(shape ?? {}).flatMap(([key, each]) =>
      each._zod.def.type === 'optional' ? [] : [key],
    ),
    words: type === 'enum' ? (inner.options ?? []).map(String) : [],
    low: finite(inner.minValue),
    high: finite(inner.maxValue),
    longest: finite(type === 'string' ? inner.maxLength : null),
  };
}
