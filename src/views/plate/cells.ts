/** Cells around points: each is the part of a region nearer to its own point than to any other (Voronoi 1908). */

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

/** The cell of each point inside a convex region, drawn in by `gapMm` on sides shared with another. */
export function cellsOf(points: readonly Point[], region: readonly Point[], gapMm: number): Point[][] {
  return points.map((own, i) =>
    points.reduce<Point[]>(
      (cell, other, j) => {
        if (i === j) return cell;
        const [dx, dy] = [other[0] - own[0], other[1] - own[1]];
        const length = Math.hypot(dx, dy);
        const normal: Point = [dx / length, dy / length];
        const middle = normal[0] * (own[0] + other[0]) * 0.5 + normal[1] * (own[1] + other[1]) * 0.5;
        return cutOff(cell, normal, middle - gapMm);
      },
      [...region],
    ),
  );
}
