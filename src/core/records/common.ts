/** Pieces that several records share. The descriptions are what a grower sees in an editor and in the manual. */

import { z } from 'zod';
import { fahrenheitToCelsius, inchesToCm, inchesToMm, LITERS_PER_US_GALLON } from '../units.ts';

export { type Form, forms } from './formNames.ts';

/** Ids: lower-case letters, digits and single hyphens. A file's name (without its ending) is the id of what it holds. */
export const idPattern = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

export function id(description: string) {
  return z.string().regex(idPattern).max(64).describe(description);
}

export function text(description: string, longest = 400) {
  return z.string().trim().min(1).max(longest).describe(description);
}

export function date(description: string) {
  return z.iso.date().describe(`${description} A calendar day, YYYY-MM-DD.`);
}

export function count(description: string, most = 100_000) {
  return z.int().min(0).max(most).describe(description);
}

/** `http`, `https` and `mailto` only: anything else could run script in a reader's browser. */
export const linkPattern = /^(?:https?:\/\/|mailto:)[^\s<>"]+$/i;

export function link(description: string) {
  return z.string().regex(linkPattern).max(500).describe(description);
}

/** Digits, and a point before the decimals. Text, since YAML would turn 1.10 into 1.1. */
export const amountPattern = /^\d{1,6}(?:\.\d{1,3})?$/;

export function amount(description: string) {
  return z.string().regex(amountPattern).describe(description);
}

export const methods = ['air-layer', 'cutting', 'division', 'graft'] as const;
export type Method = (typeof methods)[number];

export const ripeningClasses = ['very-early', 'early', 'mid', 'late', 'very-late'] as const;
export type RipeningClass = (typeof ripeningClasses)[number];

export const crops = ['breba', 'main'] as const;
export type Crop = (typeof crops)[number];

export {
  type AirClass,
  airClasses,
  type SeasonClass,
  type SummerClass,
  seasonClasses,
  summerClasses,
  type WinterClass,
  winterClasses,
} from './placeClassNames.ts';

/**
 * How sure an answer is, from a sight in the yard down to a computed guess:
 * `seen` observed here; `published` in a named source that was read; `memory` from memory of a named source; `practice` common
 * practice; `fitted` ours, fitted to dated observations; `ours` our working figure; `modeled` computed.
 */
export const standings = ['seen', 'published', 'memory', 'practice', 'fitted', 'ours', 'modeled'] as const;
export type Standing = (typeof standings)[number];

/** One piece of evidence behind an answer, in words a customer can read. */
export interface Reason {
  text: string;
  standing: Standing;
  /** Where a published figure comes from. */
  source?: string;
}

/** A computed answer never travels without its reasons. */
export interface Answer<T> {
  answer: T;
  because: Reason[];
}

/** A horticultural figure after reading: one unit per use, always a range (low = high when it is one number). */
export interface Figure {
  low: number;
  /** The middle of the range, or the one number given. */
  value: number;
  high: number;
  standing: Standing;
  source: string;
  note: string | null;
}

const figureStandings = ['published', 'memory', 'practice', 'fitted', 'ours'] as const;

/** Schema of a figure whose unit is one of `units`. */
export function figure(description: string, units: readonly [string, ...string[]]) {
  return z
    .strictObject({
      value: z.union([z.number(), z.tuple([z.number(), z.number()])]).describe('One number, or [low, high].'),
      unit: z.enum(units).describe('The unit of the value.'),
      standing: z
        .enum(figureStandings)
        .describe(
          'published: in the source named, and read there; memory: from memory of the source named, not read again; practice: common practice; fitted: ours, fitted to dated observations; ours: our working figure.',
        ),
      source: text('Where the figure comes from: author, title, year; or why we chose it.'),
      note: text('Anything a reader of the figure should know.').optional(),
    })
    .describe(description);
}

export type WrittenFigure = z.infer<ReturnType<typeof figure>>;

export const temperatureUnits = ['C', 'F'] as const;
export const heatUnits = ['degree-days C', 'degree-days F'] as const;

const toBaseUnit: Record<string, (value: number) => number> = {
  C: value => value,
  F: fahrenheitToCelsius,
  'degree-days C': value => value,
  'degree-days F': value => value / 1.8,
  days: value => value,
  hours: value => value,
  portions: value => value,
  years: value => value,
  ft: value => inchesToCm(value * 12),
  m: value => value * 100,
  gal: value => value * LITERS_PER_US_GALLON,
  L: value => value,
  share: value => value,
  '%': value => value / 100,
};

/** Normalises a figure to C, degree-days C, days, years, hours, portions, cm, liters or a share 0 to 1. */
export function normaliseFigure(written: WrittenFigure): Figure {
  const convert = toBaseUnit[written.unit];
  if (!convert) throw new RangeError(`unit without a conversion: ${written.unit}`);
  const [first, second] = Array.isArray(written.value) ? written.value : [written.value, written.value];
  const [low, high] = [convert(first), convert(second)];
  return {
    low,
    value: (low + high) / 2,
    high,
    standing: written.standing,
    source: written.source,
    note: written.note ?? null,
  };
}

/** A height given in cm or in; null when neither is given. */
export function heightCmOf(written: {
  height_cm?: number | undefined;
  height_in?: number | undefined;
}): number | null {
  if (written.height_cm !== undefined) return written.height_cm;
  return written.height_in === undefined ? null : inchesToCm(written.height_in);
}

/** A stem diameter given in mm or in; null when neither is given. */
export function caliperMmOf(written: {
  caliper_mm?: number | undefined;
  caliper_in?: number | undefined;
}): number | null {
  if (written.caliper_mm !== undefined) return written.caliper_mm;
  return written.caliper_in === undefined ? null : inchesToMm(written.caliper_in);
}

/**
 * Check of a group: at most one of two keys that say the same thing in two units. The problem is put on the second key, where
 * the grower can delete it. It looks also when other keys of the group are wrong, so that all problems show in one run.
 */
export function oneUnit(first: string, second: string) {
  return z.superRefine<Record<string, unknown>>(
    (value, context) => {
      if (value?.[first] === undefined || value[second] === undefined) return;
      context.addIssue({
        code: 'custom',
        path: [second],
        message: `"${first}" and "${second}" are both given`,
        params: { rule: 'two-units', expected: `${first} or ${second}, not both` },
      });
    },
    { when: ({ value }) => typeof value === 'object' },
  );
}

export const photoSchema = z.strictObject({
  file: text('File name in content/photos, such as fig-on-branch.jpg.', 120),
  alt: text('What the picture shows, for people who cannot see it.', 200),
});

export interface Photo {
  file: string;
  alt: string;
}
