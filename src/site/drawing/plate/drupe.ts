/** Jujubes and other plain fruits: smooth skin outside; a stone, where there is one, in firm flesh. */

import type { Fruit } from '../../../core/records/cultivar.ts';
import { type Body, bodyOf, inset, LEAST_PEEL, outlineOf } from './body.ts';
import { cheek, dots, hoops, ribs, scatter } from './engraving.ts';
import { gleam } from './gleam.ts';
import type { Desk, Layer } from './layers.ts';
import type { Point } from './pen.ts';

/** Thickness of the skin, mm. */
const PEEL_MM = 0.5;

function stalk(body: Body, desk: Desk): string {
  const into = desk.pen();
  const rim = body.side[0]?.[1] ?? 0;
  const tall = Math.max(3, body.lengthMm * 0.13);
  const wide = Math.max(0.5, body.halfMm * 0.045);
  into.move([-wide, rim + wide * 2]);
  into.curve([-wide, rim - tall * 0.5], [wide, rim - tall * 0.7], [wide * 2.4, rim - tall]);
  into.line([wide * 4.2, rim - tall * 0.94]);
  into.curve([wide * 2.6, rim - tall * 0.6], [wide, rim - tall * 0.4], [wide, rim + wide * 2]);
  into.close();
  return into.data();
}

/** The hollow the stalk stands in, and the scar of the style at the far end. */
function ends(body: Body, desk: Desk): string {
  const into = desk.pen();
  const { halfMm, lengthMm } = body;
  const rim = body.side[0]?.[1] ?? 0;
  into.move([-halfMm * 0.26, rim + halfMm * 0.05]);
  into.bend([0, rim + halfMm * 0.24], [halfMm * 0.28, rim + halfMm * 0.05]);
  into.move([-halfMm * 0.14, rim + halfMm * 0.08]);
  into.bend([0, rim + halfMm * 0.16], [halfMm * 0.16, rim + halfMm * 0.08]);
  const foot = body.side.at(-1)?.[1] ?? lengthMm;
  into.move([-halfMm * 0.05, foot - halfMm * 0.07]);
  into.bend([0, foot - halfMm * 0.02], [halfMm * 0.06, foot - halfMm * 0.08]);
  return into.data();
}

/** Patches of the second color, which spread over the skin as it ripens. */
function patches(body: Body, desk: Desk): string {
  const { halfMm, lengthMm } = body;
  const inside = ([x, y]: Point) =>
    Math.abs(x) < body.radiusAt(y) * 0.88 && x + halfMm * 0.5 > (y / lengthMm - 0.2) * halfMm;
  return dots(
    scatter(desk.random, [-halfMm, lengthMm * 0.1, halfMm, lengthMm * 0.8], halfMm * 0.14, inside, 30),
    desk,
  );
}

export function drupeOutside(fruit: Fruit, desk: Desk, patched: boolean): Layer[] {
  const body = bodyOf(fruit);
  const outline = outlineOf(body, desk);
  const layers: Layer[] = [
    { ink: 'skin', data: outline },
    ...(fruit.blush === null
      ? []
      : [
          { ink: 'blush', data: cheek(body, desk) },
          ...(patched ? [{ ink: 'patch', data: patches(body, desk), strokeMm: 1.2 }] : []),
        ]),
    { ink: 'gleam', data: gleam(body, desk, [0.16, 0.52]) },
    { ink: 'fine', data: hoops(body, desk, { from: [0.5, 0.66] }) },
    { ink: 'fine', data: ribs(body, desk, { spacing: 1.2, from: [0.76, 0.88] }) },
    { ink: 'fine', data: ends(body, desk) },
    { ink: 'edge', data: outline },
    { ink: 'stalk', data: stalk(body, desk) },
  ];
  return layers;
}

function stone(body: Body, desk: Desk): Layer[] {
  const { halfMm, lengthMm } = body;
  const [long, wide] = [lengthMm * 0.33, Math.min(halfMm * 0.3, lengthMm * 0.12)];
  const y = lengthMm * 0.51;
  const outer = desk.pen();
  outer.move([0, y - long]);
  outer.curve([wide * 0.3, y - long * 0.75], [wide, y - long * 0.5], [wide, y]);
  outer.curve([wide, y + long * 0.5], [wide * 0.3, y + long * 0.78], [0, y + long]);
  outer.curve([-wide * 0.3, y + long * 0.78], [-wide, y + long * 0.5], [-wide, y]);
  outer.curve([-wide, y - long * 0.5], [-wide * 0.3, y - long * 0.75], [0, y - long]);
  outer.close();
  const wrinkles = desk.pen();
  for (const share of [-0.62, -0.25, 0.2, 0.6]) {
    wrinkles.move([wide * share * 0.5, y - long * (0.72 - Math.abs(share) * 0.3)]);
    wrinkles.curve(
      [wide * share * 1.5, y - long * 0.3],
      [wide * share * 0.9, y + long * 0.2],
      [wide * share * 0.6, y + long * (0.7 - Math.abs(share) * 0.3)],
    );
  }
  return [
    { ink: 'stone', data: outer.data() },
    { ink: 'fine', data: wrinkles.data() },
  ];
}

export function drupeInside(fruit: Fruit, desk: Desk, stoned: boolean): Layer[] {
  const body = bodyOf(fruit, { cut: true });
  const { halfMm, lengthMm } = body;
  const outline = outlineOf(body, desk);
  const inside = ([x, y]: Point) => {
    const edge = Math.abs(x) / body.radiusAt(y);
    return edge < 0.9 && Math.hypot(x / (halfMm * 0.36), (y - lengthMm / 2) / (lengthMm * 0.38)) > 1;
  };
  const grain = scatter(
    desk.random,
    [-halfMm, lengthMm * 0.06, halfMm, lengthMm * 0.95],
    halfMm * 0.15,
    inside,
    44,
  );
  return [
    { ink: 'skin', data: outline },
    { ink: 'pulp', data: outline, move: inset(body, Math.max(PEEL_MM, desk.spacingMm * LEAST_PEEL), desk) },
    { ink: 'grain', data: dots(grain, desk) },
    ...(stoned ? stone(body, desk) : []),
    { ink: 'edge', data: outline },
    { ink: 'stalk', data: stalk(body, desk) },
  ];
}
