/** Drawing by hand with numbers: smooth outlines, tapering limbs, leaves and paper, as SVG text. */

import type { Random } from '../../src/core/random.ts';

export type Point = readonly [x: number, y: number];

const paper = '#f5f0e4';
export const ink = '#40372c';

/** One decimal, so that the last digit of a sine on another machine cannot change the drawing. */
const n = (value: number) => (Math.round(value * 10) / 10).toString();

/** A number around `middle`, at most `spread` away. */
export function about(random: Random, middle: number, spread: number): number {
  return middle + (random.uniform() * 2 - 1) * spread;
}

/** A smooth line through points (Catmull-Rom turned into Bezier pieces). */
export function smooth(points: readonly Point[], closed = false): string {
  const last = points.length - 1;
  const at = (index: number): Point =>
    closed ? points[(index + points.length) % points.length]! : points[Math.min(Math.max(index, 0), last)]!;
  const pieces = [`M${n(at(0)[0])} ${n(at(0)[1])}`];
  for (let i = 0; i < (closed ? points.length : last); i += 1) {
    const [p0, p1, p2, p3] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const first: Point = [p1[0] + (p2[0] - p0[0]) / 6, p1[1] + (p2[1] - p0[1]) / 6];
    const second: Point = [p2[0] - (p3[0] - p1[0]) / 6, p2[1] - (p3[1] - p1[1]) / 6];
    pieces.push(`C${[...first, ...second, ...p2].map(n).join(' ')}`);
  }
  return pieces.join('') + (closed ? 'Z' : '');
}

/** Points around a center whose distance is `radius(turn)`, `turn` going once round from the top, clockwise. */
export function around(
  [cx, cy]: Point,
  radius: (turn: number) => readonly [rx: number, ry: number],
  steps = 36,
): Point[] {
  return Array.from({ length: steps }, (_, i) => {
    const turn = i / steps;
    const [rx, ry] = radius(turn);
    const angle = turn * 2 * Math.PI;
    return [cx + rx * Math.sin(angle), cy - ry * Math.cos(angle)] as const;
  });
}

/** Half-width profile along a vertical axis, from top (0) to bottom (1), turned into a closed outline. */
export function turned(
  [cx, top]: Point,
  height: number,
  halfWidth: (down: number) => number,
  steps = 28,
): Point[] {
  const side = (sign: number) =>
    Array.from({ length: steps + 1 }, (_, i): Point => {
      const down = i / steps;
      return [cx + sign * halfWidth(down), top + height * down];
    });
  return [...side(1), ...side(-1).reverse()];
}

export interface Stroke {
  fill?: string;
  stroke?: string;
  width?: number;
  opacity?: number;
}

export function path(d: string, { fill = 'none', stroke, width = 3, opacity }: Stroke): string {
  const line = stroke
    ? ` stroke="${stroke}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"`
    : '';
  return `<path d="${d}" fill="${fill}"${line}${opacity === undefined ? '' : ` opacity="${opacity}"`}/>`;
}

export function ellipse([x, y]: Point, rx: number, ry: number, degrees: number, stroke: Stroke): string {
  const { fill = 'none', stroke: line, width = 2, opacity } = stroke;
  const outline = line ? ` stroke="${line}" stroke-width="${width}"` : '';
  const clear = opacity === undefined ? '' : ` opacity="${opacity}"`;
  return `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}" transform="rotate(${n(degrees)} ${n(x)} ${n(y)})" fill="${fill}"${outline}${clear}/>`;
}

/** A branch along points, thick at the start and thin at the end. */
export function limb(points: readonly Point[], from: number, to: number, fill: string): string {
  const edge = (sign: number) =>
    points.map(([x, y], i): Point => {
      const [ax, ay] = points[Math.max(i - 1, 0)]!;
      const [bx, by] = points[Math.min(i + 1, points.length - 1)]!;
      const length = Math.hypot(bx - ax, by - ay) || 1;
      const half = (from + ((to - from) * i) / (points.length - 1)) / 2;
      return [x - (sign * half * (by - ay)) / length, y + (sign * half * (bx - ax)) / length];
    });
  return path(smooth([...edge(1), ...edge(-1).reverse()], true), { fill, stroke: ink, width: 2.5 });
}

/** A point at a distance from another, `degrees` clockwise from straight up. */
export function away([x, y]: Point, distance: number, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return [x + distance * Math.sin(angle), y - distance * Math.cos(angle)];
}

export interface Leaf {
  length: number;
  width: number;
  /** Teeth along each edge; 0 for a smooth edge. */
  teeth: number;
  fill: string;
}

/** A leaf that hangs from `stalk`, pointing `degrees` clockwise from up, with its veins. */
export function leaf(stalk: Point, degrees: number, { length, width, teeth, fill }: Leaf): string {
  const foot = away(stalk, length * 0.16, degrees);
  const tip = away(foot, length, degrees);
  const steps = Math.max(12, teeth * 2);
  const edge = (sign: number) =>
    Array.from({ length: steps + 1 }, (_, i): Point => {
      const along = i / steps;
      const bulge = Math.sin(Math.PI * along ** 0.8) ** 0.85;
      const tooth = teeth > 0 && i % 2 === 1 ? 1.07 : 1;
      const middle = away(foot, length * along, degrees);
      return away(middle, (sign * width * bulge * tooth) / 2, degrees + 90);
    });
  const veins = [0.2, 0.36, 0.52, 0.68].flatMap(along =>
    [1, -1].map(sign => {
      const start = away(foot, length * along, degrees);
      const end = away(start, width * 0.42 * Math.sin(Math.PI * (along + 0.1)), degrees + sign * 52);
      return path(smooth([start, end]), { stroke: ink, width: 1.4, opacity: 0.4 });
    }),
  );
  return [
    path(smooth([stalk, foot]), { stroke: ink, width: 4 }),
    path(smooth([...edge(1), ...edge(-1).reverse()], true), { fill, stroke: ink, width: 2.5 }),
    path(smooth([foot, tip]), { stroke: ink, width: 2, opacity: 0.55 }),
    ...veins,
  ].join('');
}

/** A soft gradient from the lit upper left to the shaded lower right. */
export function lit(id: string, light: string, middle: string, dark: string): string {
  return `<radialGradient id="${id}" cx="0.36" cy="0.3" r="0.85"><stop offset="0" stop-color="${light}"/><stop offset="0.5" stop-color="${middle}"/><stop offset="1" stop-color="${dark}"/></radialGradient>`;
}

/** A sheet of paper with a drawing on it. */
export function sheet(width: number, height: number, defs: string, drawing: string): string {
  const ground = `<radialGradient id="paper" cx="0.5" cy="0.45" r="0.8"><stop offset="0.4" stop-color="${paper}"/><stop offset="1" stop-color="#e9e0cc"/></radialGradient>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><defs>${ground}${defs}</defs><rect width="${width}" height="${height}" fill="url(#paper)"/>${drawing}</svg>`;
}

/** The shadow something throws on the table. */
export function shadow(at: Point, rx: number, ry: number): string {
  return ellipse(at, rx, ry, 0, { fill: '#6b5d45', opacity: 0.14 });
}
