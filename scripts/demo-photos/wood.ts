/** Parts of a bare tree: bark, buds and roots. */

import type { Random } from '../../src/core/random.ts';
import { about, away, ink, limb, type Point, path, smooth } from './ink.ts';

export const bark = '#8c7353';

/** A winter bud on the side of a stem. */
export function bud(at: Point, degrees: number): string {
  const tip = away(at, 30, degrees);
  return path(smooth([away(at, 9, degrees - 90), tip, away(at, 9, degrees + 90)], true), {
    fill: '#6f5236',
    stroke: ink,
    width: 2,
  });
}

/** A wavering line of roots, thinner toward the end. */
export function root(
  random: Random,
  from: Point,
  degrees: number,
  length: number,
  thickness: number,
): string {
  const points: Point[] = [from];
  let [at, heading] = [from, degrees];
  for (let i = 0; i < 6; i += 1) {
    heading += about(random, 0, 16);
    at = away(at, length / 6, heading);
    points.push(at);
  }
  const hairs = points.slice(2).map(point =>
    path(smooth([point, away(point, about(random, 34, 14), heading + about(random, 0, 75))]), {
      stroke: '#9b7b55',
      width: 2,
    }),
  );
  return limb(points, thickness, 2, '#b08f66') + hairs.join('');
}
