/**
 * Whether a height and a stem can be those of a tree in its pot: by the pot, by each other, and by what was seen before. A number typed
 * below the wrong unit is found by trying the others.
 */

import { type Day, dayInWords } from '../days.ts';
import { potWithArticle } from '../records/container.ts';
import { cmToInches, inchesToCm, inchesToMm, mmToInches, roundTo } from '../units.ts';

export const measureColumns = ['height_in', 'height_cm', 'caliper_in', 'caliper_mm'] as const;
export type MeasureColumn = (typeof measureColumns)[number];

/**
 * The tallest and the thickest tree that is likely in a pot of each class, cm and mm. Our working figures: about two and a half times the smallest
 * plant a pot of the trade is sold with.
 */
const mostInPot: Readonly<Record<string, readonly [heightCm: number, caliperMm: number]>> = {
  SP1: [35, 8],
  SP2: [45, 8],
  SP3: [60, 10],
  SP4: [75, 14],
  SP5: [100, 17],
  '#1': [140, 23],
  '#2': [190, 30],
  '#3': [240, 38],
  '#5': [310, 52],
  '#7': [370, 65],
  '#10': [420, 80],
  '#15': [500, 100],
  '#20': [560, 115],
  '#25': [620, 130],
};

/**
 * Height over stem thickness, both in one unit. Above: ANSI Z60.1 lets a half-inch stem of a shade tree be 8 ft high at most, 192 times its thickness
 * (from memory, to be verified). Below: a stump cut back. Ours.
 */
const mostSlender = 200;
const leastSlender = 8;

/** A measure that is this many times the last one, or less than this share of it, is asked about: trees are cut back, but seldom below a third. Ours. */
const greatestGrowth = 2;
const leastLeft = 0.33;

/** A measure within this factor of the last one was seen twice, and a tree too large for its pot is one. Ours. */
const alike = 1.3;

/** What is known of the lot besides. */
export interface MeasureContext {
  /** Class of the pot; null where it stands in none. */
  pot: string | null;
  heightCm: number | null;
  caliperMm: number | null;
  last: {
    heightCm: { value: number; on: Day } | null;
    caliperMm: { value: number; on: Day } | null;
  };
}

export interface Implausible {
  /** What is odd, as the middle of a sentence. */
  why: string;
  /** The number and unit that would fit, such as `61 cm`; null where none does. */
  likely: string | null;
}

type Kind = 'height' | 'caliper';

const kindOf = (column: MeasureColumn): Kind => (column.startsWith('height') ? 'height' : 'caliper');
export const unitOf = (column: MeasureColumn): string => column.slice(column.indexOf('_') + 1);

/** A number of a unit in cm for heights, in mm for stems. */
const inStandard: Readonly<Record<Kind, Readonly<Record<string, (value: number) => number>>>> = {
  height: {
    in: inchesToCm,
    cm: value => value,
    ft: value => inchesToCm(value * 12),
    mm: value => value / 10,
  },
  caliper: { mm: value => value, in: inchesToMm, cm: value => value * 10 },
};

/** What was typed in a column, in cm for heights and mm for stems. */
export function inCmOrMm(column: MeasureColumn, typed: number): number {
  return inStandard[kindOf(column)][unitOf(column)]!(typed);
}

function inWords(kind: Kind, value: number): string {
  return kind === 'height'
    ? `${roundTo(cmToInches(value), 1)} in (${roundTo(value, 1)} cm)`
    : `${roundTo(value, 1)} mm (${roundTo(mmToInches(value), 0.1)} in)`;
}

const nameOf: Readonly<Record<Kind, string>> = { height: 'tall', caliper: 'thick in the stem' };

const mostOf = (kind: Kind, pot: string | null) =>
  pot === null ? undefined : mostInPot[pot]?.[kind === 'height' ? 0 : 1];

/** The other measure, to compare with; null for one that is itself too large: the slip is there. */
function believable(kind: Kind, context: MeasureContext): number | null {
  const value = kind === 'height' ? context.heightCm : context.caliperMm;
  return value !== null && value <= (mostOf(kind, context.pot) ?? Number.POSITIVE_INFINITY) ? value : null;
}

/** What is odd about a measure in cm or mm; null where nothing is. */
function oddity(kind: Kind, value: number, context: MeasureContext): string | null {
  const most = mostOf(kind, context.pot);
  const last = kind === 'height' ? context.last.heightCm : context.last.caliperMm;
  const seenAlike = last !== null && value > last.value / alike && value < last.value * alike;
  if (most !== undefined && value > most && !seenAlike)
    return `${inWords(kind, value)} is more than a tree in ${potWithArticle(context.pot!)} is likely to be ${nameOf[kind]}`;
  if (last !== null && (value > last.value * greatestGrowth || value < last.value * leastLeft))
    return `${inWords(kind, value)}, but it was ${inWords(kind, last.value)} on ${dayInWords(last.on)}`;
  const heightCm = kind === 'height' ? value : believable('height', context);
  const caliperMm = kind === 'caliper' ? value : believable('caliper', context);
  if (heightCm === null || caliperMm === null) return null;
  const slender = (heightCm * 10) / caliperMm;
  if (slender > mostSlender || slender < leastSlender)
    return `a tree ${inWords('height', heightCm)} tall hardly has a stem of ${inWords('caliper', caliperMm)}`;
  return null;
}

/** Why a number in a column can hardly be right, and in which unit it would be; null where it can. */
export function implausible(
  column: MeasureColumn,
  typed: number,
  context: MeasureContext,
): Implausible | null {
  const kind = kindOf(column);
  const units = inStandard[kind];
  const written = unitOf(column);
  const why = oddity(kind, inCmOrMm(column, typed), context);
  if (why === null) return null;
  const likely = Object.keys(units).find(
    unit => unit !== written && oddity(kind, units[unit]!(typed), context) === null,
  );
  return { why, likely: likely === undefined ? null : `${typed} ${likely}` };
}
