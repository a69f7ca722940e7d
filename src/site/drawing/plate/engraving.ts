/**
 * Tone by lines, as an engraver lays it: lines follow the form and stand only where the light, which comes from the upper left, does
 * not reach; a second set between them deepens the shade.
 */

import type { Random } from '../../../core/random.ts';
import type { Body } from './body.ts';
import type { Desk } from './layers.ts';
import type { Pen, Point } from './pen.ts';

/** Towards the light: right, down, toward the reader. Length 1. */
const light = [-0.5, -0.56, 0.66] as const;
/** From here to the right edge the paper throws some light back. */
const REFLECTED_FROM = 0.8;
const REFLECTED = 1.3;

/** Darkness of a point of the surface, 0 in full light. */
function darknessAt(body: Body, along: number, across: number): number {
  const [outward, down] = body.normalAt(along);
  const facing = Math.sqrt(1 - across * across);
  const lit = light[0] * outward * across + light[1] * down + light[2] * outward * facing;
  return 1 - Math.max(0, lit) - Math.max(0, across - REFLECTED_FROM) * REFLECTED;
}

/** A line on the surface: where it runs and how dark it is there, by the share of the way along it. */
interface Course {
  at(share: number): Point;
  dark(share: number): number;
}

/** Points looked at along a line. */
const LOOKS = 24;

/** Draws the parts of a line that lie in the dark, each as one or two bends with ragged ends. */
function strokeInShade(
  desk: Desk,
  into: Pen,
  course: Course,
  from: number,
  to: number,
  threshold: number,
): void {
  let start: number | null = null;
  const shareOf = (look: number) => from + ((to - from) * look) / LOOKS;
  for (let look = 0; look <= LOOKS + 1; look += 1) {
    const dark =
      look <= LOOKS && course.dark(shareOf(look)) > threshold + (desk.random.uniform() - 0.5) * 0.05;
    if (dark && start === null) start = look;
    if (!dark && start !== null) {
      if (look - start > 3) bendThrough(into, course.at, shareOf(start), shareOf(look - 1));
      start = null;
    }
  }
}

/** One bend for a short line, two for a long one. */
function bendThrough(into: Pen, at: Course['at'], from: number, to: number): void {
  const bends = to - from > 0.6 ? 2 : 1;
  into.move(at(from));
  for (let i = 0; i < bends; i += 1) {
    const [a, b] = [from + ((to - from) * i) / bends, from + ((to - from) * (i + 1)) / bends];
    const [start, middle, end] = [at(a), at((a + b) / 2), at(b)];
    into.bend([2 * middle[0] - (start[0] + end[0]) / 2, 2 * middle[1] - (start[1] + end[1]) / 2], end);
  }
}

export interface Tone {
  /** Distance between the lines, as a multiple of the usual. */
  spacing?: number;
  /** Darkness from which lines stand; every second line only from the second. */
  from: readonly [number, number];
  /** Part of the length the lines keep to. */
  between?: readonly [number, number];
}

/** Lines from the stalk end to the far end: for ribbed fruits. */
export function ribs(body: Body, desk: Desk, { spacing = 1, from, between = [0.02, 0.98] }: Tone): string {
  const { random } = desk;
  const spacingMm = desk.spacingMm * spacing;
  const into = desk.pen();
  const count = Math.max(4, Math.round(body.halfMm / spacingMm));
  for (let i = -count + 1; i < count; i += 1) {
    const across = (i + (random.uniform() - 0.5) * 0.3) / count;
    const course: Course = {
      at: along => body.on(along, across),
      dark: along => darknessAt(body, along, across),
    };
    const threshold = from[Math.abs(i) % 2] as number;
    const start = Math.max(between[0], body.ends[0] + 0.03);
    const end = Math.min(between[1], body.ends[1] - 0.02);
    strokeInShade(desk, into, course, start, end, threshold);
  }
  return into.data();
}

/** How far lines around a fruit sag toward its far end, as a share of the radius: the reader looks from a little above. */
const SAG = 0.2;

/** Lines around the fruit: for smooth ones, and across ribs for the deepest shade. */
export function hoops(body: Body, desk: Desk, { spacing = 1, from, between = [0.06, 0.97] }: Tone): string {
  const spacingMm = desk.spacingMm * spacing;
  const into = desk.pen();
  const count = Math.max(5, Math.round(body.lengthMm / spacingMm));
  for (let i = 0; i < count; i += 1) {
    const y = body.lengthMm * (between[0] + ((between[1] - between[0]) * (i + 0.5)) / count);
    const along = alongAt(body, y);
    const radius = body.on(along, 1)[0] - body.on(along, 0)[0];
    const acrossAt = (share: number) => Math.sin((share - 0.5) * Math.PI);
    const sag = SAG * radius * Math.min(1, (body.lengthMm - y) / radius);
    const course: Course = {
      at: share => {
        const across = acrossAt(share);
        const [x] = body.on(along, across);
        return [x, y + sag * Math.sqrt(1 - across * across) - SAG * radius * 0.2];
      },
      dark: share => darknessAt(body, along, acrossAt(share)),
    };
    strokeInShade(desk, into, course, 0.03, 0.97, from[i % 2] as number);
  }
  return into.data();
}

/** Share of the way along the silhouette at which it reaches a height. */
export function alongAt(body: Body, y: number): number {
  const { side } = body;
  for (let i = 1; i < side.length; i += 1) {
    const after = side[i]![1];
    if (y > after) continue;
    const before = side[i - 1]![1];
    if (after > before) return (i - 1 + Math.max(0, y - before) / (after - before)) / (side.length - 1);
  }
  return 1;
}

/** A second color on the sunny side: strokes along the fruit, close together at its middle and apart toward its edge. `from`: how far along it may begin. */
export function cheek(body: Body, desk: Desk, from = 0.08): string {
  const { random } = desk;
  const into = desk.pen();
  const count = Math.max(6, Math.round((body.halfMm * 0.75) / desk.spacingMm));
  for (let i = 0; i < count; i += 1) {
    const share = i / (count - 1);
    const across = 0.9 - 0.95 * share ** 1.35;
    // The cheek is an ellipse, ragged most where it ends.
    const reach =
      0.34 * Math.sqrt(1 - (1.5 * share - 0.52) ** 2) * (1 - 0.25 * random.uniform() * (0.3 + share));
    const middle = 0.55 + 0.1 * (random.uniform() - 0.5) * (0.3 + share);
    const at = (along: number) => body.on(along, across);
    bendThrough(
      into,
      at,
      Math.max(body.ends[0] + from * (0.9 + 0.35 * random.uniform()), middle - reach),
      Math.min(body.ends[1] - 0.06, middle + reach),
    );
  }
  return into.data();
}

function isApart(one: Point, other: Point, mm: number): boolean {
  const right = one[0] - other[0];
  const down = one[1] - other[1];
  return right * right + down * down >= mm * mm;
}

/** Dots spread evenly by chance inside a region, no two closer than `apartMm` (dart throwing). */
export function scatter(
  random: Random,
  box: readonly [left: number, top: number, right: number, bottom: number],
  apartMm: number,
  inside: (at: Point) => boolean,
  most: number,
): Point[] {
  const [left, top, right, bottom] = box;
  const points: Point[] = [];
  for (let misses = 0; misses < 150 && points.length < most; ) {
    const at: Point = [left + (right - left) * random.uniform(), top + (bottom - top) * random.uniform()];
    const free = inside(at) && points.every(other => isApart(other, at, apartMm));
    if (free) points.push(at);
    else misses += 1;
  }
  return points;
}

/** Dots in the order that takes the fewest bytes: by rows. */
export function dots(points: readonly Point[], desk: Desk): string {
  const into = desk.pen();
  for (const at of [...points].sort((a, b) => a[1] - b[1])) into.dot(at);
  return into.data();
}
