/**
 * What was published about changes of the list, content/changes.jsonl: one line of JSON for each change, and for the prices of a lot when
 * it was first published. The build adds lines at the end. What was once published stays as it was, whatever is typed later.
 */

import { z } from 'zod';
import { type Day, parseDay } from '../days.ts';
import { type Form, forms, type Reason, standings } from './common.ts';

/**
 * opened: the lot came onto the list; ready: a form of it became ready; price: a form went up or down; sold-out: none are left;
 * back: there are some again. One event of a kind for a lot on a day; in this order.
 */
export const eventKinds = ['opened', 'back', 'ready', 'price', 'sold-out'] as const;
export type EventKind = (typeof eventKinds)[number];

const day = z
  .string()
  .refine(text => parseDay(text) !== null)
  .transform(text => text as Day);
const minor = z.int().nonnegative();
const form = z.enum(forms);
const currency = z.string().regex(/^[A-Z]{3}$/);
const reason: z.ZodType<Reason> = z.strictObject({
  text: z.string(),
  standing: z.enum(standings),
  source: z.string().exactOptional(),
});

const eventLine = z.strictObject({
  /** A `tag:` URI (RFC 4151). */
  id: z.string().startsWith('tag:'),
  kind: z.enum(eventKinds),
  day,
  lot: z.string(),
  forms: z.array(form),
  /** In minor units. */
  moves: z.array(z.strictObject({ form, from: minor, to: minor })),
  currency,
  left: z.int().nonnegative(),
  because: z.array(reason),
});

const askedLine = z.strictObject({
  day,
  lot: z.string(),
  /** What was asked for each form, in minor units. */
  asked: z.partialRecord(form, minor),
  currency,
});

export type EventLine = z.infer<typeof eventLine>;
export interface AskedLine {
  day: Day;
  lot: string;
  asked: Partial<Record<Form, number>>;
  currency: string;
}
export type ChangeLine = EventLine | AskedLine;

/** One line of the file; null when it is none that the build has written. */
export function parseChangeLine(text: string): ChangeLine | null {
  try {
    const line = z.union([eventLine, askedLine]).safeParse(JSON.parse(text));
    return line.success ? line.data : null;
  } catch {
    return null;
  }
}

/** The line as it is written, without its end. */
export function changeLineText(line: ChangeLine): string {
  return JSON.stringify(line);
}

export const isEventLine = (line: ChangeLine): line is EventLine => 'id' in line;

/**
 * The domain that feeds and calendars name their entries under: that of the first change that was published, so that moving to another domain changes no
 * id (RFC 4151, 2.1: who held it on that day may go on using it). Where nothing was published yet, that of the site's address.
 */
export function namingHost(lines: readonly ChangeLine[], address: string): string {
  const first = lines.find(isEventLine);
  return /^tag:([^,]+),/.exec(first?.id ?? '')?.[1] ?? new URL(address).hostname;
}
