/** Where the light falls: a few pale lines on the left shoulder, the shading turned about. */

import type { Body } from './body.ts';
import { alongAt } from './engraving.ts';
import type { Desk } from './layers.ts';

const LINES = 5;

/** The lines lie between two heights, given as shares of the length. */
export function gleam(body: Body, desk: Desk, between: readonly [number, number] = [0.2, 0.52]): string {
  const into = desk.pen();
  const at = (share: number, across: number) => body.on(alongAt(body, body.lengthMm * share), across);
  const [top, bottom] = between;
  for (let i = 0; i < LINES; i += 1) {
    const across = -0.72 + i * 0.075;
    const cut = (Math.abs(i - 1.5) / LINES) * (bottom - top) * 0.5 + desk.random.uniform() * 0.02;
    const [from, to] = [at(top + cut * 0.6, across), at(bottom - cut, across)];
    const middle = at((top + bottom) / 2, across);
    into.move(from);
    into.bend([2 * middle[0] - (from[0] + to[0]) / 2, 2 * middle[1] - (from[1] + to[1]) / 2], to);
  }
  return into.data();
}
