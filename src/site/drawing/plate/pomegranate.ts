/** Pomegranates, crown up: leathery and faintly angled outside; chambers of arils in pale pith inside. */

import type { Fruit } from '../../../core/records/cultivar.ts';
import { type Body, bodyOf, inset, kept, LEAST_PEEL, outlineOf } from './body.ts';
import { cutOff } from './cutOff.ts';
import { cheek, dots, hoops, ribs, scatter } from './engraving.ts';
import type { Desk, Layer } from './layers.ts';
import { type Point, polygon } from './pen.ts';

/** The crown stands above the length of the fruit, as tall as this share of the half width. */
const CROWN = 0.42;
const RIND = 0.1;
/** Thickness of the colored skin, mm. */
const PEEL_MM = 1.4;
/** Distance between two arils at least, mm, and how many are drawn at most. */
const ARIL_MM = 5.6;
const MOST_ARILS = 84;
/** In the closest packing a circle takes this many times the square of the distance to its neighbors, turned about: 2 / sqrt 3. */
const PACKED = 1.1547;
/** How far an aril may lie from its place in the packing, as a share of that distance. */
const ASTRAY = 0.22;
/** Directions of the membranes from the middle of the fruit, in turns from the right, clockwise. */
const membranes = [-0.27, -0.03, 0.13, 0.36, 0.53];

function crown(body: Body, desk: Desk, teeth: readonly number[], tall: number): string {
  const { halfMm } = body;
  const into = desk.pen();
  const base = halfMm * 0.24;
  const flare = halfMm * 0.42;
  const notch = -halfMm * CROWN * 0.42;
  const tip = (share: number): Point => [flare * share, -halfMm * CROWN * tall * (1 - 0.1 * share * share)];
  into.move([-base, halfMm * 0.05]);
  teeth.forEach((share, i) => {
    const [x, y] = tip(share);
    const [before, after] = [share - 0.34, share + 0.34].map(at => at * flare * 0.72) as [number, number];
    if (i === 0) into.curve([-base * 0.9, notch * 0.5], [x * 0.9, y * 0.55], [x, y]);
    else into.bend([(before + x) / 2, notch * 1.2], [x, y]);
    if (i < teeth.length - 1) into.bend([x + (after - x) * 0.3, notch * 1.25], [after, notch]);
    else into.curve([x * 0.9, y * 0.55], [base * 0.9, notch * 0.5], [base, halfMm * 0.05]);
  });
  into.close();
  return into.data();
}

function crownLayers(body: Body, desk: Desk): Layer[] {
  const front = crown(body, desk, [-1, -0.34, 0.34, 1], 1);
  const lines = desk.pen();
  const { halfMm } = body;
  for (const share of [-0.62, -0.2, 0.16, 0.4, 0.6, 0.78]) {
    lines.move([share * halfMm * 0.26, 0]);
    lines.bend(
      [share * halfMm * 0.26, -halfMm * CROWN * 0.3],
      [share * halfMm * 0.36, -halfMm * CROWN * (0.42 + 0.2 * Math.abs(share))],
    );
  }
  return [
    { ink: 'crown behind', data: crown(body, desk, [-0.7, 0, 0.7], 0.86) },
    { ink: 'crown', data: front },
    { ink: 'fine', data: lines.data() },
  ];
}

function pits(body: Body, desk: Desk): Point[] {
  const { halfMm, lengthMm } = body;
  const inside = ([x, y]: Point) => Math.abs(x) < body.radiusAt(y) * 0.9;
  return scatter(desk.random, [-halfMm, lengthMm * 0.1, halfMm, lengthMm * 0.95], halfMm * 0.2, inside, 8);
}

export function pomegranateOutside(fruit: Fruit, desk: Desk): Layer[] {
  const body = bodyOf(fruit);
  const outline = outlineOf(body, desk);
  const layers: Layer[] = [...crownLayers(body, desk), { ink: 'skin', data: outline }];
  if (fruit.blush !== null) layers.push({ ink: 'blush', data: cheek(body, desk) });
  layers.push(
    { ink: 'speck', data: dots(pits(body, desk), desk), strokeMm: 0.8 },
    { ink: 'fine', data: hoops(body, desk, { spacing: 1.25, from: [0.42, 0.62] }) },
    { ink: 'fine', data: ribs(body, desk, { spacing: 1.5, from: [0.7, 0.84] }) },
    { ink: 'edge', data: outline },
  );
  return layers;
}

/** An ellipse as a polygon. */
function ellipse([x, y]: Point, radiusX: number, radiusY: number): Point[] {
  return Array.from({ length: 28 }, (_, i) => {
    const angle = (i / 28) * 2 * Math.PI;
    return [x + Math.cos(angle) * radiusX, y + Math.sin(angle) * radiusY];
  });
}

function chambers(body: Body, middle: Point): Point[][] {
  const { halfMm, lengthMm } = body;
  const wall = halfMm * 0.026;
  const [radiusX, radiusY] = [halfMm * (1 - RIND), lengthMm * 0.5 - halfMm * RIND * 1.15];
  const whole = ellipse([0, lengthMm / 2], radiusX, radiusY);
  return membranes.map((from, i) => {
    const to = (membranes[i + 1] ?? (membranes[0] as number) + 1) * 2 * Math.PI;
    const start = from * 2 * Math.PI;
    const after: Point = [Math.sin(start), -Math.cos(start)];
    const before: Point = [-Math.sin(to), Math.cos(to)];
    const limit = (normal: Point) => normal[0] * middle[0] + normal[1] * middle[1] - wall;
    return cutOff(cutOff(whole, after, limit(after)), before, limit(before));
  });
}

function isInside(polygon: readonly Point[], [x, y]: Point, margin: number): boolean {
  return polygon.every((from, i) => {
    const to = polygon[(i + 1) % polygon.length] as Point;
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    return (dx * (y - from[1]) - dy * (x - from[0])) / (Math.hypot(dx, dy) || 1) > margin;
  });
}

/** Places in rows, each half a step beside the one above, and none quite on its place. */
function packing({ halfMm, lengthMm }: Body, apart: number, { random }: Desk): Point[] {
  const places: Point[] = [];
  const stray = () => (random.uniform() - 0.5) * apart * ASTRAY;
  let row = 0;
  for (let y = apart / 2; y < lengthMm; y += apart * 0.866) {
    for (let x = -halfMm + (row % 2) * apart * 0.5; x < halfMm; x += apart)
      places.push([x + stray(), y + stray()]);
    row += 1;
  }
  return places;
}

export function pomegranateInside(fruit: Fruit, desk: Desk): Layer[] {
  const body = bodyOf(fruit, { cut: true });
  const { halfMm, lengthMm } = body;
  const outline = outlineOf(body, desk);
  const rind = halfMm * RIND;
  const middle: Point = [-halfMm * 0.05, lengthMm * 0.58];
  const area = Math.PI * halfMm * lengthMm * 0.5 * 0.7;
  const apart = Math.max(ARIL_MM, Math.sqrt((area / MOST_ARILS) * PACKED));
  const packed = packing(body, apart, desk).filter(
    ([x, y]) =>
      Math.abs(x) < body.radiusAt(y) - rind - apart * 0.46 &&
      Math.hypot(x - middle[0], y - middle[1]) > apart * 0.9,
  );
  const arils = desk.pen();
  const floors = desk.pen();
  for (const chamber of chambers(body, middle)) {
    polygon(
      floors,
      chamber.map(at => kept(body, at, rind)),
    );
    // Arils point to the middle of the fruit.
    for (const [x, y] of packed) {
      if (!isInside(chamber, [x, y], apart * 0.36)) continue;
      const away = Math.hypot(x - middle[0], y - middle[1]);
      const reach = (apart * 0.16) / away;
      arils.move([x - (x - middle[0]) * reach, y - (y - middle[1]) * reach]);
      arils.line([x + (x - middle[0]) * reach, y + (y - middle[1]) * reach]);
    }
  }
  return [
    ...crownLayers(body, desk),
    { ink: 'skin', data: outline },
    { ink: 'rind', data: outline, move: inset(body, Math.max(PEEL_MM, desk.spacingMm * LEAST_PEEL), desk) },
    { ink: 'hollow', data: floors.data() },
    { ink: 'membrane', data: arils.data(), strokeMm: apart * 0.98 },
    { ink: 'aril', data: arils.data(), strokeMm: apart * 0.8 },
    { ink: 'kernel', data: arils.data(), strokeMm: apart * 0.2 },
    { ink: 'edge', data: outline },
  ];
}
