/** Persimmons: smooth, under a calyx of four lobes; fibers from a pale core, and seeds where the species has them. */

import type { Fruit } from '../../../core/records/cultivar.ts';
import { type Body, bodyOf, inset, LEAST_PEEL, outlineOf } from './body.ts';
import { cheek, dots, hoops, ribs, scatter } from './engraving.ts';
import { gleam } from './gleam.ts';
import type { Desk, Layer } from './layers.ts';
import { type Point, smoothLoop } from './pen.ts';

/** Thickness of the skin, mm. */
const PEEL_MM = 0.5;

/** The calyx of a small fruit covers more of it. */
function calyxReach(body: Body): number {
  return Math.max(body.halfMm * 0.5, Math.min(body.halfMm * 0.72, 14));
}

/** Tips of the four lobes and half their breadth, in reaches and lifts of the calyx; those behind first. */
const lobeTips = [
  [-1.12, -0.4, 0.2],
  [1.14, -0.1, 0.2],
  [-0.5, 3, 0.36],
  [0.52, 3.2, 0.36],
] as const;

function calyx(body: Body, desk: Desk): Layer[] {
  const reach = calyxReach(body);
  const rim = body.side[0]?.[1] ?? 0;
  const lift = reach * 0.16;
  const lobes = desk.pen();
  const veins = desk.pen();
  const seat = rim + lift * 0.3;
  for (const [tipX, tipY, breadth] of lobeTips) {
    const [dx, dy] = [reach * tipX, lift * tipY];
    const length = Math.hypot(dx, dy);
    const [sideX, sideY] = [(-dy / length) * reach * breadth, (dx / length) * reach * breadth];
    const at = (share: number, side: number): Point => [
      dx * share + sideX * side,
      seat + dy * share + sideY * side,
    ];
    lobes.move(at(0, 0.35));
    lobes.curve(at(0.3, 1.2), at(0.75, 1), at(1, 0));
    lobes.curve(at(0.75, -1), at(0.3, -1.2), at(0, -0.35));
    lobes.close();
    veins.move(at(0.2, 0));
    veins.line(at(0.86, 0));
  }
  const stem = desk.pen();
  stem.move([-reach * 0.1, rim + lift * 0.2]);
  stem.curve([-reach * 0.08, rim - lift], [-reach * 0.04, rim - lift * 2], [reach * 0.06, rim - lift * 3]);
  stem.line([reach * 0.26, rim - lift * 2.7]);
  stem.curve([reach * 0.16, rim - lift * 1.8], [reach * 0.12, rim - lift], [reach * 0.12, rim + lift * 0.2]);
  stem.close();
  return [
    { ink: 'stalk', data: stem.data() },
    { ink: 'calyx', data: lobes.data() },
    { ink: 'fine', data: veins.data() },
  ];
}

export function persimmonOutside(fruit: Fruit, desk: Desk): Layer[] {
  const body = bodyOf(fruit);
  const outline = outlineOf(body, desk);
  const layers: Layer[] = [{ ink: 'skin', data: outline }];
  if (fruit.blush !== null) layers.push({ ink: 'blush', data: cheek(body, desk) });
  layers.push(
    { ink: 'gleam', data: gleam(body, desk) },
    { ink: 'fine', data: hoops(body, desk, { from: [0.46, 0.64] }) },
    { ink: 'fine', data: ribs(body, desk, { spacing: 1.4, from: [0.76, 0.88] }) },
    { ink: 'edge', data: outline },
    ...calyx(body, desk),
  );
  return layers;
}

/** Flat seeds stand upright beside the core; where a species is mostly seedless, the empty places show as slits. */
function seeds(body: Body, desk: Desk, seeded: boolean): Layer[] {
  const into = desk.pen();
  const { halfMm, lengthMm } = body;
  const long = seeded ? Math.min(lengthMm * 0.2, 8) : lengthMm * 0.17;
  const wide = seeded ? long * 0.46 : long * 0.16;
  for (const side of [-1, 1]) {
    const [x, y] = [side * halfMm * 0.36, lengthMm * (0.5 + 0.03 * side)];
    const lean = side * long * 0.22;
    smoothLoop(into, [
      [x - lean, y - long],
      [x + wide, y - long * 0.2],
      [x + lean * 0.6 + wide * 0.4, y + long * 0.8],
      [x + lean, y + long],
      [x - wide, y + long * 0.2],
    ]);
  }
  return [{ ink: seeded ? 'stone' : 'hollow', data: into.data() }];
}

export function persimmonInside(fruit: Fruit, desk: Desk, seeded: boolean): Layer[] {
  const body = bodyOf(fruit, { cut: true });
  const { halfMm, lengthMm } = body;
  const { random } = desk;
  const outline = outlineOf(body, desk);
  const rim = body.side[0]?.[1] ?? 0;
  const core = desk.pen();
  smoothLoop(core, [
    [0, rim + lengthMm * 0.05],
    [halfMm * 0.09, rim + lengthMm * 0.14],
    [halfMm * 0.06, lengthMm * 0.5],
    [halfMm * 0.03, lengthMm * 0.82],
    [-halfMm * 0.03, lengthMm * 0.82],
    [-halfMm * 0.06, lengthMm * 0.5],
    [-halfMm * 0.09, rim + lengthMm * 0.14],
  ]);
  const fibers = desk.pen();
  const count = Math.round((halfMm * 5) / (desk.spacingMm * 3.6));
  for (let i = 0; i < count; i += 1) {
    const along = 0.06 + (0.88 * (i >> 1)) / (count / 2);
    const across = (i % 2 === 0 ? -1 : 1) * (0.9 - random.uniform() * 0.08);
    const [x, y] = body.on(along, across);
    const middle: Point = [0, lengthMm * (0.25 + 0.5 * along)];
    const inner = 0.3 + random.uniform() * 0.25;
    const end: Point = [x * inner, middle[1] + (y - middle[1]) * inner];
    fibers.move([x, middle[1] + (y - middle[1]) * 0.9]);
    fibers.bend([(x + end[0]) / 2, (y + end[1]) / 2 + (end[1] - y) * 0.12], end);
  }
  const inside = ([x, y]: Point) => Math.abs(x) < body.radiusAt(y) * 0.82 && Math.abs(x) > halfMm * 0.12;
  const specks = scatter(
    random,
    [-halfMm, lengthMm * 0.12, halfMm, lengthMm * 0.88],
    halfMm * 0.13,
    inside,
    36,
  );
  return [
    { ink: 'skin', data: outline },
    { ink: 'pulp', data: outline, move: inset(body, Math.max(PEEL_MM, desk.spacingMm * LEAST_PEEL), desk) },
    { ink: 'grain', data: fibers.data() },
    { ink: 'grain', data: dots(specks, desk) },
    { ink: 'core', data: core.data() },
    ...seeds(body, desk, seeded),
    { ink: 'edge', data: outline },
    ...calyx(body, desk),
  ];
}
