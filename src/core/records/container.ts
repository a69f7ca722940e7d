/** Pots: size classes of the trade, and liters. */

import { LITERS_PER_CUBIC_INCH } from '../units.ts';

/**
 * A container class of the American nursery trade with the volumes it spans, in cubic inches. The rows are from memory of
 * ANSI Z60.1 and are to be verified before any claim of conformity is made; liters are computed from them.
 */
export interface ContainerClass {
  name: string;
  fromCubicInches: number;
  toCubicInches: number;
}

export const containerClasses: readonly ContainerClass[] = [
  { name: 'SP1', fromCubicInches: 6.5, toCubicInches: 8 },
  { name: 'SP2', fromCubicInches: 13, toCubicInches: 15 },
  { name: 'SP3', fromCubicInches: 20, toCubicInches: 30 },
  { name: 'SP4', fromCubicInches: 51, toCubicInches: 63 },
  { name: 'SP5', fromCubicInches: 93, toCubicInches: 136 },
  { name: '#1', fromCubicInches: 152, toCubicInches: 251 },
  { name: '#2', fromCubicInches: 320, toCubicInches: 474 },
  { name: '#3', fromCubicInches: 628, toCubicInches: 742 },
  { name: '#5', fromCubicInches: 785, toCubicInches: 1242 },
  { name: '#7', fromCubicInches: 1337, toCubicInches: 1790 },
  { name: '#10', fromCubicInches: 2080, toCubicInches: 2646 },
  { name: '#15', fromCubicInches: 2768, toCubicInches: 3696 },
  { name: '#20', fromCubicInches: 4520, toCubicInches: 5152 },
  { name: '#25', fromCubicInches: 5775, toCubicInches: 6861 },
];

/** What a grower may write for a pot: a class name (`"#1"`, in quotes) or a volume in liters (`3 L`). */
export const containerPattern =
  /^(?:SP[1-5]|#(?:1|2|3|5|7|10|15|20|25)|(?:0\.\d{1,2}|[1-9]\d{0,2}(?:\.\d{1,2})?) L)$/;

/** A pot a lot stands in. */
export interface Container {
  /** As written: `#1`, `SP4`, `3 L`. */
  written: string;
  /** Volume in liters; the middle of the class when a class was written. */
  liters: number;
  /** Place of the class in `containerClasses`. */
  classIndex: number;
  /** Whether the volume lies inside the class, or in a gap between two classes, where the nearest is taken. */
  exact: boolean;
}

/** Liters in the middle of a class. */
export function classLiters({ fromCubicInches, toCubicInches }: ContainerClass): number {
  return ((fromCubicInches + toCubicInches) / 2) * LITERS_PER_CUBIC_INCH;
}

/**
 * Finds the class of a volume in liters: the class that spans it, else the class whose nearer bound is closest,
 * marked as not exact, since the trade's classes leave gaps.
 */
export function classifyLiters(liters: number): { classIndex: number; exact: boolean } {
  const cubicInches = liters / LITERS_PER_CUBIC_INCH;
  const distance = ({ fromCubicInches, toCubicInches }: ContainerClass) =>
    Math.max(fromCubicInches - cubicInches, cubicInches - toCubicInches, 0);
  let classIndex = 0;
  containerClasses.forEach((candidate, index) => {
    if (distance(candidate) < distance(containerClasses[classIndex]!)) classIndex = index;
  });
  return { classIndex, exact: distance(containerClasses[classIndex]!) === 0 };
}

/** Reads a pot as written; the text must match `containerPattern`. */
export function containerOf(written: string): Container {
  if (written.endsWith(' L')) {
    const liters = Number(written.slice(0, -2));
    return { written, liters, ...classifyLiters(liters) };
  }
  const classIndex = containerClasses.findIndex(({ name }) => name === written);
  const found = containerClasses[classIndex];
  if (!found) throw new RangeError(`not a container class: ${written}`);
  return { written, liters: classLiters(found), classIndex, exact: true };
}

/** The class of a pot as somebody wrote it; null for what is no pot. */
export function classOf(written: string): ContainerClass | null {
  return containerPattern.test(written) ? containerClasses[containerOf(written).classIndex]! : null;
}

/** `a #1 pot`, `an SP5 pot`, `an 8 L pot`. */
export function potWithArticle(name: string): string {
  return `${/^(?:SP|8|11 L|18 L)/.test(name) ? 'an' : 'a'} ${name} pot`;
}
