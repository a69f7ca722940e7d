/** Silhouettes of fruits, as path data that can be looked at and changed in a drawing program. */

import type { FruitShape } from '../../../core/records/cultivar.ts';
import type { Point } from './pen.ts';

type Curve = readonly [Point, Point, Point];

/** Right half of a silhouette from the stalk end to the far end: a start and cubic curves, in halves of the width and in lengths. */
export interface Half {
  start: Point;
  curves: readonly Curve[];
}

/** Points a curve is measured at; more would not move a line by the width of a pen. */
const STEPS = 24;

function onCubic(from: Point, [a, b, to]: Curve, u: number): Point {
  const v = 1 - u;
  const along = (axis: 0 | 1) =>
    v * v * v * from[axis] + 3 * v * v * u * a[axis] + 3 * v * u * u * b[axis] + u * u * u * to[axis];
  return [along(0), along(1)];
}

/** Points along a silhouette. */
export function sampled({ start, curves }: Half): Point[] {
  const points: Point[] = [start];
  let from = start;
  for (const curve of curves) {
    for (let step = 1; step <= STEPS; step += 1) points.push(onCubic(from, curve, step / STEPS));
    from = curve[2];
  }
  return points;
}

/** A silhouette written as path data of one `M` and `C`s. */
function half(path: string): Half {
  const numbers = path.match(/[\d.]+/g)?.map(Number) ?? [];
  const points = Array.from(
    { length: numbers.length / 2 },
    (_, i): Point => [numbers[2 * i] as number, numbers[2 * i + 1] as number],
  );
  const curves = Array.from({ length: (points.length - 1) / 3 }, (_, i) => {
    return points.slice(1 + 3 * i, 4 + 3 * i) as unknown as Curve;
  });
  return fitted({ start: points[0] as Point, curves });
}

/** The same silhouette reaching exactly from 0 to 1 both ways. */
function fitted(drawn: Half): Half {
  const points = sampled(drawn);
  const widest = Math.max(...points.map(([x]) => x));
  const [top, bottom] = [Math.min(...points.map(([, y]) => y)), Math.max(...points.map(([, y]) => y))];
  const scaled = ([x, y]: Point): Point => [x / widest, (y - top) / (bottom - top)];
  return {
    start: scaled(drawn.start),
    curves: drawn.curves.map(([a, b, to]) => [scaled(a), scaled(b), scaled(to)]),
  };
}

const round = half('M0 0 C0.552 0, 1 0.224, 1 0.5 C1 0.776, 0.552 1, 0 1');

const oval = half('M0 0 C0.5 0, 1 0.2, 1 0.52 C1 0.82, 0.55 1, 0 1');

/** Fruits without a neck. */
export const smooth: Record<FruitShape, Half> = {
  round,
  oval,
  cluster: oval,
  flattened: half(
    'M0 0.07 C0.2 0.07, 0.3 0, 0.5 0 C0.82 0, 1 0.22, 1 0.48 C1 0.78, 0.8 1, 0.45 1 C0.3 1, 0.2 0.96, 0 0.96',
  ),
  pear: half('M0 0 C0.3 0, 0.42 0.1, 0.52 0.26 C0.62 0.4, 1 0.44, 1 0.68 C1 0.88, 0.6 1, 0 1'),
  long: half('M0 0.01 C0.45 0, 0.88 0.04, 0.96 0.28 C1 0.42, 1 0.6, 0.97 0.72 C0.9 0.95, 0.42 1, 0 1'),
  heart: half('M0 0.05 C0.2 0.04, 0.3 0, 0.5 0 C0.84 0, 1 0.16, 1 0.36 C1 0.64, 0.5 0.84, 0 1'),
};

/** Figs narrow into a neck, short or long, that carries the stalk. */
export const necked: Record<FruitShape, Half> = {
  pear: half('M0.13 0 C0.17 0.11, 0.24 0.2, 0.46 0.32 C0.78 0.46, 1 0.5, 1 0.69 C1 0.89, 0.56 1, 0 1'),
  round: half('M0.15 0 C0.19 0.07, 0.34 0.1, 0.6 0.18 C0.88 0.27, 1 0.4, 1 0.58 C1 0.83, 0.58 1, 0 1'),
  flattened: half(
    'M0.14 0 C0.18 0.08, 0.36 0.09, 0.62 0.15 C0.9 0.22, 1 0.38, 1 0.55 C1 0.82, 0.72 1, 0.36 1 C0.22 1, 0.12 0.98, 0 0.975',
  ),
  oval: half('M0.14 0 C0.19 0.08, 0.42 0.12, 0.7 0.26 C0.92 0.37, 1 0.46, 1 0.58 C1 0.82, 0.56 1, 0 1'),
  long: half('M0.16 0 C0.22 0.07, 0.64 0.12, 0.86 0.32 C0.96 0.43, 1 0.52, 1 0.62 C1 0.84, 0.6 1, 0 1'),
  heart: half('M0.16 0.02 C0.24 0.04, 0.36 0, 0.56 0.05 C0.86 0.1, 1 0.24, 1 0.42 C1 0.7, 0.5 0.88, 0 1'),
  cluster: oval,
};

/** From outside, the foot of a fruit hides the dip behind it. */
export function withFootInFront({ start, curves }: Half): Half {
  const [a, b, to] = curves.at(-1) as Curve;
  const flat = ([x]: Point): Point => [x, 1];
  return to[1] === 1
    ? { start, curves }
    : { start, curves: [...curves.slice(0, -1), [flat(a), flat(b), flat(to)]] };
}
