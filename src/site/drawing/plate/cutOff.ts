/** Convex shapes cut along lines (Sutherland and Hodgman 1974). */

import type { Point } from './pen.ts';

/** Keeps the part of a convex polygon on the near side of a line: `normal · p <= limit`. */
export function cutOff(polygon: readonly Point[], [nx, ny]: Point, limit: number): Point[] {
  const kept: Point[] = [];
  polygon.forEach((from, i) => {
    const to = polygon[(i + 1) % polygon.length] as Point;
    const [a, b] = [nx * from[0] + ny * from[1] - limit, nx * to[0] + ny * to[1] - limit];
    if (a <= 0) kept.push(from);
    if (a < 0 !== b < 0 && a !== b) {
      const share = a / (a - b);
      kept.push([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
    }
  });
  return kept;
}
