/** Figs: neck, ribs and eye outside; rind, florets and seeds around a hollow inside. */

import type { Random } from '../../../core/random.ts';
import type { Eye, Fruit } from '../../../core/records/cultivar.ts';
import { type Body, bodyOf, inset, kept, LEAST_PEEL, outlineOf } from './body.ts';
import { alongAt, cheek, dots, hoops, ribs, scatter } from './engraving.ts';
import { gleam } from './gleam.ts';
import type { Desk, Layer } from './layers.ts';
import { type Point, smoothLoop } from './pen.ts';

/** The white of the rind and the layer of florets, as shares of the half width. */
const RIND = 0.13;
/** How far the hollow reaches, as shares of the flesh. */
const HOLLOW = 0.22;
/** Thickness of the skin itself, mm. */
const PEEL_MM = 0.6;
const SEED_MM = 1.3;
const SEEDS_APART_MM = 2.5;
const MOST_SEEDS = 40;

/** Half the width of the eye as a share of the half width of the fruit. */
const eyeWidths: Record<Eye, number> = {
  none: 0.07,
  closed: 0.09,
  sealed: 0.1,
  'half-open': 0.14,
  open: 0.2,
};

const LEAN = 0.16;

function stalk(body: Body, desk: Desk): string {
  const [left] = body.on(0, -1);
  const [right, top] = body.on(0, 1);
  const width = right - left;
  const height = Math.max(2.5, width * 0.9);
  const into = desk.pen();
  into.move([left, top + 0.3]);
  into.curve(
    [left + width * 0.16, -height * 0.4],
    [left + width * 0.3, -height * 0.7],
    [left + width * 0.42, -height],
  );
  into.bend([left + width * 0.75, -height * 1.15], [left + width * 1.02, -height * 0.96]);
  into.curve([left + width * 0.92, -height * 0.6], [left + width * 0.94, -height * 0.3], [right, top + 0.3]);
  into.close();
  return into.data();
}

/** The eye from the side: scales around an opening that shows as much as it is open. */
function eyeLayers(body: Body, eye: Eye, desk: Desk): Layer[] {
  if (eye === 'none') return [];
  const half = body.halfMm * eyeWidths[eye];
  const y = body.lengthMm * 0.985;
  const open = desk.pen();
  open.move([-half, y - half * 0.16]);
  open.turn(half, half * 0.5, [half, y - half * 0.16]);
  open.turn(half, half * 0.5, [-half, y - half * 0.16]);
  open.close();
  const scales = desk.pen();
  for (const share of [-1.5, -0.9, -0.3, 0.3, 0.9, 1.5]) {
    scales.move([share * half * 1.15, y - half * (1.15 - Math.abs(share) * 0.35)]);
    scales.bend([share * half * 0.8, y - half * 0.6], [share * half * 0.45, y - half * 0.2]);
  }
  const layers: Layer[] = [
    { ink: 'eye', data: open.data() },
    { ink: 'fine', data: scales.data() },
  ];
  if (eye === 'sealed') {
    const drop = desk.pen();
    drop.move([0, y + half * 0.1]);
    drop.curve([half * 0.85, y + half * 1.1], [half * 0.6, y + half * 1.9], [0, y + half * 1.9]);
    drop.curve([-half * 0.6, y + half * 1.9], [-half * 0.85, y + half * 1.1], [0, y + half * 0.1]);
    drop.close();
    layers.push({ ink: 'honey', data: drop.data() });
  }
  return layers;
}

export function figOutside(fruit: Fruit, desk: Desk): Layer[] {
  const body = bodyOf(fruit, { neck: true, lean: LEAN });
  const outline = outlineOf(body, desk);
  const layers: Layer[] = [
    { ink: 'stalk', data: stalk(body, desk) },
    { ink: 'skin', data: outline },
  ];
  if (fruit.blush !== null) layers.push({ ink: 'blush', data: cheek(body, desk, 0.36) });
  layers.push(
    { ink: 'gleam', data: gleam(body, desk, [0.46, 0.74]) },
    { ink: 'fine', data: ribs(body, desk, { from: [0.46, 0.68], between: [0.33, 0.98] }) },
    { ink: 'fine', data: ribs(body, desk, { spacing: 2, from: [0.5, 0.62], between: [0.02, 0.3] }) },
    { ink: 'fine', data: hoops(body, desk, { spacing: 1.3, from: [0.8, 0.9], between: [0.3, 0.97] }) },
    ...eyeLayers(body, fruit.eye, desk),
    { ink: 'edge', data: outline },
  );
  return layers;
}

/** Where the points of the inner edge of the rind lie, from the neck to the eye, as shares of the way. */
const wallPoints = [0, 0.14, 0.34, 0.56, 0.76, 0.9, 0.97];

/** The inner edge of the rind, ragged, and open at the eye. */
function pulpLoop(body: Body, random: Random, eye: Eye): Point[] {
  const rind = body.halfMm * RIND;
  const start = alongAt(body, body.lengthMm * topOfPulp(body));
  const wall = (share: number, sign: number): Point => {
    const along = start + (0.99 - start) * share;
    const [before, at, after] = [-0.02, 0, 0.02].map(step => body.on(along + step, 1)) as [
      Point,
      Point,
      Point,
    ];
    const length = Math.hypot(after[0] - before[0], after[1] - before[1]);
    const deep = (rind * (0.85 + 0.3 * random.uniform())) / length;
    const x = at[0] - body.on(along, 0)[0] - (after[1] - before[1]) * deep;
    return [sign * Math.max(rind * 0.5, x), at[1] + (after[0] - before[0]) * deep];
  };
  const slit = body.halfMm * eyeWidths[eye] * 0.5;
  const bottom = body.lengthMm - rind * 0.45;
  return [
    [0, body.on(start, 1)[1] - rind * 0.9],
    ...wallPoints.map(share => wall(share, 1)),
    [slit, bottom],
    [-slit, bottom],
    ...wallPoints.map(share => wall(share, -1)).reverse(),
  ];
}

/** Height at which the flesh begins below the neck, as a share of the length. */
function topOfPulp(body: Body): number {
  for (let share = 0.05; share < 0.5; share += 0.01) {
    if (body.radiusAt(body.lengthMm * share) > body.halfMm * 0.42) return share + 0.05;
  }
  return 0.3;
}

export function figInside(fruit: Fruit, desk: Desk): Layer[] {
  const { random, spacingMm } = desk;
  const body = bodyOf(fruit, { neck: true, lean: -LEAN, cut: true });
  const { halfMm, lengthMm } = body;
  const loop = pulpLoop(body, random, fruit.eye);
  const pulp = desk.pen();
  smoothLoop(pulp, loop);
  const top = lengthMm * topOfPulp(body);
  const middle: Point = [0, top + (lengthMm - top) * 0.52];
  const [reachX, reachY] = [halfMm * (1 - RIND), (lengthMm - top) * 0.5];
  // 0 in the middle of the flesh, 1 at its edge.
  const out = ([x, y]: Point) => Math.hypot((x - middle[0]) / reachX, (y - middle[1]) / reachY);
  const hollow = desk.pen();
  const corners = 9;
  smoothLoop(
    hollow,
    Array.from({ length: corners }, (_, i): Point => {
      const angle = (i / corners) * 2 * Math.PI;
      const reach = HOLLOW * (i % 2 === 0 ? 1.25 : 0.55) * (0.8 + 0.4 * random.uniform());
      return [Math.cos(angle) * reachX * reach * 0.62, middle[1] + Math.sin(angle) * reachY * reach * 1.35];
    }),
  );
  const seeds = scatter(
    random,
    [-reachX, top, reachX, lengthMm],
    SEEDS_APART_MM,
    at => {
      const share = out(at);
      const isInFlesh = share > HOLLOW + 0.12 && share < 0.84;
      return isInFlesh && Math.abs(at[0]) < body.radiusAt(at[1]) - halfMm * RIND * 1.4;
    },
    MOST_SEEDS,
  );
  const florets = desk.pen();
  const count = Math.round((Math.PI * (reachX + reachY)) / (spacingMm * 3));
  for (let i = 0; i < count; i += 1) {
    const angle = ((i + random.uniform() * 0.6) / count) * 2 * Math.PI;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const [from, to] = [0.93 - random.uniform() * 0.05, 0.52 + random.uniform() * 0.22];
    const at = (share: number) =>
      kept(body, [cos * reachX * share, middle[1] + sin * reachY * share], halfMm * RIND);
    florets.move(at(from));
    florets.line(at(to));
  }
  const outline = outlineOf(body, desk);
  const seedDots = dots(seeds, desk);
  return [
    { ink: 'stalk', data: stalk(body, desk) },
    { ink: 'skin', data: outline },
    {
      ink: 'rind',
      data: outline,
      move: inset(body, Math.max(PEEL_MM, desk.spacingMm * LEAST_PEEL), desk),
    },
    { ink: 'pulp', data: pulp.data() },
    { ink: 'grain', data: florets.data() },
    { ink: 'hollow', data: hollow.data() },
    { ink: 'seat', data: seedDots, strokeMm: SEED_MM },
    { ink: 'seed', data: seedDots, strokeMm: SEED_MM * 0.55 },
    { ink: 'edge', data: outline },
  ];
}
