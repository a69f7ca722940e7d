/**
 * The body of a fruit: a silhouette turned about its axis, and points on its surface. Everything is in millimeters, with the axis
 * at x = 0 and the stalk end at y = 0.
 */

import type { Fruit } from '../../../core/records/cultivar.ts';
import type { Desk } from './layers.ts';
import type { Pen, Point } from './pen.ts';
import { necked, sampled, smooth, withFootInFront } from './silhouettes.ts';

export interface Body {
  readonly lengthMm: number;
  /** Half the greatest width. */
  readonly halfMm: number;
  /** The right half, stalk end first. */
  readonly side: readonly Point[];
  /** Where along the side the fruit is highest and lowest: beyond lie the dips at its ends. */
  readonly ends: readonly [number, number];
  /** Draws the silhouette. */
  outline(into: Pen): void;
  /** Draws the right half of it. */
  rightHalf(into: Pen): void;
  /** A point of the surface: `along` 0 at the stalk end to 1 at the far end, `across` -1 at the left edge to 1 at the right. */
  on(along: number, across: number): Point;
  /** Where the surface faces on the right edge: outward from the axis and down; length 1. */
  normalAt(along: number): Point;
  /** Radius at a height; 0 outside. */
  radiusAt(y: number): number;
}

/** Share of the length that leans: above where any fruit is widest, so that its width stays what it is. */
const LEANING = 0.36;

/** How far the neck of a fruit leans to one side, as a share of the half width. */
function leanAt(share: number, y: number): number {
  const up = Math.max(0, 1 - y / LEANING);
  return share * up * up;
}

/** How a body is looked at. */
export interface Look {
  /** For fruits that narrow toward the stalk. */
  neck?: boolean;
  /** How far the neck leans to the right, as a share of the half width. */
  lean?: number;
  /** Cut along its length; else whole. */
  cut?: boolean;
}

/** The body of a fruit. */
export function bodyOf(
  { shape, lengthMm, widthMm }: Fruit,
  { neck = false, lean = 0, cut = false }: Look = {},
): Body {
  const whole = (neck ? necked : smooth)[shape];
  const half = cut ? whole : withFootInFront(whole);
  const halfMm = widthMm / 2;
  const place = ([x, y]: Point): Point => [x * halfMm, y * lengthMm];
  const side = sampled(half).map(place);
  const leaning = ([x, y]: Point, sign: number): Point => [
    (sign * x + leanAt(lean, y)) * halfMm,
    y * lengthMm,
  ];
  const downRight = (into: Pen) => {
    into.move(leaning(half.start, 1));
    for (const [a, b, to] of half.curves) into.curve(leaning(a, 1), leaning(b, 1), leaning(to, 1));
  };
  const rightHalf = (into: Pen) => {
    downRight(into);
    into.line(leaning([0, half.start[1]], 1));
    into.close();
  };
  const outline = (into: Pen) => {
    downRight(into);
    const ends = [half.start, ...half.curves.map(curve => curve[2])];
    for (let i = half.curves.length - 1; i >= 0; i -= 1) {
      const [a, b] = half.curves[i] as (typeof half.curves)[number];
      into.curve(leaning(b, -1), leaning(a, -1), leaning(ends[i] as Point, -1));
    }
    into.close();
  };
  const on = (along: number, across: number): Point => {
    const position = Math.min(1, Math.max(0, along)) * (side.length - 1);
    const before = side[Math.floor(position)] as Point;
    const after = side[Math.ceil(position)] as Point;
    const share = position % 1;
    const x = before[0] + (after[0] - before[0]) * share;
    const y = before[1] + (after[1] - before[1]) * share;
    return [x * across + leanAt(lean, y / lengthMm) * halfMm, y];
  };
  const radiusAt = (y: number) => {
    for (let i = 1; i < side.length; i += 1) {
      const fromY = side[i - 1]![1];
      const toY = side[i]![1];
      if ((y >= fromY && y <= toY) || (y >= toY && y <= fromY)) {
        const fromX = side[i - 1]![0];
        const toX = side[i]![0];
        return toY === fromY ? Math.max(fromX, toX) : fromX + ((toX - fromX) * (y - fromY)) / (toY - fromY);
      }
    }
    return 0;
  };
  const normals = side.map((_, i): Point => {
    const [fromX, fromY] = side[Math.max(0, i - 1)] as Point;
    const [toX, toY] = side[Math.min(side.length - 1, i + 1)] as Point;
    const length = Math.hypot(toX - fromX, toY - fromY);
    return [(toY - fromY) / length, (fromX - toX) / length];
  });
  const normalAt = (along: number) =>
    normals[Math.round(Math.min(1, Math.max(0, along)) * (side.length - 1))] as Point;
  const heights = side.map(([, y]) => y);
  const ends = [Math.min(...heights), Math.max(...heights)].map(
    y => heights.indexOf(y) / (side.length - 1),
  ) as [number, number];
  return { lengthMm, halfMm, side, ends, outline, rightHalf, on, normalAt, radiusAt };
}

/** The point itself, or the nearest at its height that lies so far inside the silhouette. */
export function kept(body: Body, [x, y]: Point, insideMm: number): Point {
  const room = Math.max(0, body.radiusAt(y) - insideMm);
  return [Math.min(room, Math.max(-room, x)), y];
}

/** A skin thinner than this share of the spacing of the shading would not show its color. */
export const LEAST_PEEL = 0.7;

/** Draws a silhouette smaller all round: what lies inside a skin of some thickness. */
export function inset({ lengthMm, halfMm }: Body, mm: number, { perMm }: Desk): string {
  const short = (value: number) => String(Math.round(value * 1000) / 1000);
  return `translate(0 ${short(mm * perMm)})scale(${short(1 - mm / halfMm)} ${short(1 - (2 * mm) / lengthMm)})`;
}

/** The silhouette as path data. */
export function outlineOf(body: Body, desk: Desk): string {
  const line = desk.pen();
  body.outline(line);
  return line.data();
}
