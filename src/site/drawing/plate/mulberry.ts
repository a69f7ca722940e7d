/** Mulberries and other clusters: drupelets around a core, darker between them. */

import type { Fruit } from '../../../core/records/cultivar.ts';
import { type Body, bodyOf, inset, outlineOf } from './body.ts';
import { dots } from './engraving.ts';
import type { Desk, Layer } from './layers.ts';
import { type Point, smoothLoop } from './pen.ts';

/** Width of a drupelet, mm: about 3, as far as a plate may hold them. */
const DRUPELET_MM = 3.3;
const MOST_DRUPELETS = 44;

/** Drupelets stand up to this angle from the middle, as seen around the core; those behind it do not show. Radians. */
const EDGE = 1.15;

interface Drupelet {
  at: Point;
  radiusX: number;
  radiusY: number;
}

/** Drupelets in rows around the fruit, stalk end first: each row lies over the one before. */
function drupeletRows(body: Body, desk: Desk): Drupelet[][] {
  const { halfMm, lengthMm } = body;
  const area = Math.PI * halfMm * lengthMm * 0.5;
  const size = Math.max(DRUPELET_MM, Math.sqrt((area / MOST_DRUPELETS) * 1.5));
  const rows = Math.max(3, Math.round((lengthMm - size) / (size * 0.76)) + 1);
  return Array.from({ length: rows }, (_, row) => {
    const middle = size * 0.5 + ((lengthMm - size) * row) / (rows - 1);
    const radius = Math.max(size * 0.25, body.radiusAt(middle) - size * 0.28);
    const round = Math.max(1, Math.round((2 * EDGE * radius) / size));
    const turned = (row % 2) * 0.5 + (desk.random.uniform() - 0.5) * 0.24;
    return Array.from({ length: round + 1 }, (_, i) => ((i + turned) / round - 0.5) * 2 * EDGE)
      .filter(angle => Math.abs(angle) <= EDGE * 1.06)
      .map((angle): Drupelet => {
        const lift = size * 0.14 * (desk.random.uniform() - 0.5);
        const y = Math.min(lengthMm - size * 0.5, Math.max(size * 0.5, middle + lift));
        return {
          at: [(Math.sin(angle) / Math.sin(EDGE)) * radius, y],
          radiusX: size * (0.19 + 0.33 * Math.cos(angle)),
          radiusY: size * 0.5,
        };
      });
  });
}

function stalk(body: Body, desk: Desk): string {
  const into = desk.pen();
  const tall = Math.min(9, body.lengthMm * 0.3);
  const wide = Math.min(0.9, body.halfMm * 0.12);
  into.move([-wide, 1]);
  into.curve([-wide, -tall * 0.4], [wide * 0.5, -tall * 0.7], [wide * 2.2, -tall]);
  into.line([wide * 3.6, -tall * 0.94]);
  into.curve([wide * 2, -tall * 0.6], [wide, -tall * 0.3], [wide, 1]);
  into.close();
  return into.data();
}

function bumps(found: readonly Drupelet[], desk: Desk): string {
  const into = desk.pen();
  for (const { at, radiusX, radiusY } of found) {
    into.move([at[0] - radiusX, at[1]]);
    into.turn(radiusX, radiusY, [at[0] + radiusX, at[1]]);
    into.turn(radiusX, radiusY, [at[0] - radiusX, at[1]]);
  }
  return into.data();
}

/** The lower right of each drupelet, away from the light. */
function shades(found: readonly Drupelet[], desk: Desk): string {
  const into = desk.pen();
  for (const { at, radiusX, radiusY } of found) {
    into.move([at[0] + radiusX * 0.72, at[1] - radiusY * 0.1]);
    into.bend(
      [at[0] + radiusX * 0.6, at[1] + radiusY * 0.72],
      [at[0] - radiusX * 0.3, at[1] + radiusY * 0.7],
    );
  }
  return into.data();
}

export function clusterOutside(fruit: Fruit, desk: Desk): Layer[] {
  const body = bodyOf(fruit);
  const rows = drupeletRows(body, desk);
  const found = rows.flat();
  const lights = found
    .filter(({ at }) => at[0] < body.halfMm * 0.6)
    .map(({ at, radiusX, radiusY }): Point => [at[0] - radiusX * 0.3, at[1] - radiusY * 0.35]);
  const styles = found.map(
    ({ at, radiusX, radiusY }): Point => [at[0] + radiusX * 0.12, at[1] + radiusY * 0.25],
  );
  const blushed = found.filter(({ at }) => at[0] > body.halfMm * 0.1);
  return [
    { ink: 'stalk', data: stalk(body, desk) },
    { ink: 'between', data: outlineOf(body, desk), move: inset(body, body.halfMm * 0.14, desk) },
    ...rows.map(row => ({ ink: 'skin bump', data: bumps(row, desk) })),
    ...(fruit.blush === null ? [] : [{ ink: 'blush bump', data: bumps(blushed, desk) }]),
    { ink: 'fine', data: shades(found, desk) },
    { ink: 'glint', data: dots(lights, desk), strokeMm: 0.6 },
    { ink: 'style', data: dots(styles, desk), strokeMm: 0.4 },
  ];
}

export function clusterInside(fruit: Fruit, desk: Desk): Layer[] {
  const body = bodyOf(fruit, { cut: true });
  const { halfMm, lengthMm } = body;
  const rim = drupeletRows(body, desk).flatMap(row => row.filter((_, i) => i === 0 || i === row.length - 1));
  const core = desk.pen();
  smoothLoop(core, [
    [0, -0.5],
    [halfMm * 0.17, lengthMm * 0.12],
    [halfMm * 0.2, lengthMm * 0.5],
    [0, lengthMm * 0.88],
    [-halfMm * 0.2, lengthMm * 0.5],
    [-halfMm * 0.17, lengthMm * 0.12],
  ]);
  const walls = desk.pen();
  const seeds: Point[] = [];
  const count = Math.max(5, Math.round(lengthMm / 2.6));
  for (let i = 0; i < count; i += 1) {
    for (const side of [-1, 1]) {
      const y = lengthMm * (0.06 + (0.86 * (i + 0.25 + side * 0.12)) / count);
      const radius = body.radiusAt(y);
      walls.move([side * radius * 0.24, y]);
      walls.bend([side * radius * 0.6, y - 0.3], [side * radius * 0.82, y - 0.2]);
      seeds.push([side * radius * 0.62, y + (lengthMm / count) * 0.42]);
    }
  }
  return [
    { ink: 'stalk', data: stalk(body, desk) },
    { ink: 'skin bump', data: bumps(rim, desk) },
    { ink: 'pulp bare', data: outlineOf(body, desk), move: inset(body, body.halfMm * 0.12, desk) },
    { ink: 'rind', data: core.data() },
    { ink: 'grain', data: walls.data() },
    { ink: 'seat', data: dots(seeds, desk), strokeMm: 1.1 },
    { ink: 'seed', data: dots(seeds, desk), strokeMm: 0.6 },
  ];
}
