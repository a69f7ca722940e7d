/**
 * A small plate for the rows of lists: left half skin, right half cut. One symbol for each kind and shape, stretched to the length and
 * width of each fruit and colored where it is used, so that a row takes few bytes.
 */

import type { Fruit, FruitShape } from '../../../core/records/cultivar.ts';
import { type Body, bodyOf, type Look } from './body.ts';
import type { FruitKind } from './kinds.ts';
import { type Pen, type Point, pen, smoothLoop } from './pen.ts';

/** Symbols are drawn in a square of this many steps. */
const BOX = 100;

/** A path of a symbol; presentation attributes, because style sheets of a page do not reach into another file. */
interface SymbolPath {
  d: string;
  fill?: string;
  stroke?: string;
  'stroke-width'?: number;
}

const color = {
  skin: 'var(--skin)',
  flesh: 'var(--flesh)',
  blush: 'var(--blush)',
  rind: 'var(--rind)',
  leaf: 'var(--leaf)',
  wood: 'var(--wood)',
  line: 'var(--line)',
  edge: 'var(--edge)',
} as const;

const traits: Omit<Fruit, 'shape'> = {
  lengthMm: BOX,
  widthMm: BOX,
  skin: 'green',
  blush: null,
  flesh: 'white',
  eye: 'none',
  splits: 'low',
  rain: 'good',
};

function drawn(draw: (into: Pen) => void): string {
  const into = pen(1);
  draw(into);
  return into.data();
}

function dotted(points: readonly Point[]): string {
  return drawn(into => {
    for (const at of points) into.dot(at);
  });
}

/** The right half drawn in by a share of the width. */
function insetHalf(body: Body, share: number): string {
  const into = pen(1);
  const points = Array.from({ length: 9 }, (_, i): Point => {
    const [x, y] = body.on(0.06 + (i / 8) * 0.88, 1 - share);
    return [x, BOX / 2 + (y - BOX / 2) * (1 - share)];
  });
  smoothLoop(into, [[0, points[0]![1]], ...points, [0, points.at(-1)![1]]]);
  return into.data();
}

/** Seeds or arils in the right half, on arcs around the middle. */
function arcs(radii: readonly number[], each: number, middleY: number): Point[] {
  return radii.flatMap((radius, ring) =>
    Array.from({ length: each + ring * 2 }, (_, i): Point => {
      const angle = ((i + 0.5) / (each + ring * 2) - 0.5) * Math.PI;
      return [Math.cos(angle) * radius, middleY + Math.sin(angle) * radius];
    }),
  );
}

const looks: Record<FruitKind, Look> = {
  fig: { neck: true },
  pomegranate: {},
  persimmon: {},
  'seeded persimmon': {},
  cluster: {},
  jujube: {},
  plain: {},
};

function insideOf(kind: FruitKind, body: Body): SymbolPath[] {
  const half = drawn(into => body.rightHalf(into));
  switch (kind) {
    case 'fig':
      return [
        { d: half, fill: color.rind },
        {
          d: drawn(into =>
            smoothLoop(into, [
              [0, 34],
              [24, 42],
              [38, 62],
              [30, 84],
              [0, 95],
            ]),
          ),
          fill: color.flesh,
        },
        { d: dotted(arcs([14, 25], 4, 65)), stroke: color.rind, 'stroke-width': 4 },
      ];
    case 'pomegranate':
      return [
        { d: half, fill: color.rind },
        {
          d: dotted(arcs([14, 27, 40], 4, 50).filter(([x, y]) => x < body.radiusAt(y) - 7)),
          stroke: color.flesh,
          'stroke-width': 13,
        },
      ];
    case 'cluster':
      return [
        { d: insetHalf(body, 0.16), fill: color.flesh },
        { d: 'M2 8v74', stroke: color.rind, 'stroke-width': 6 },
      ];
    case 'jujube':
      return [
        { d: half, fill: color.flesh },
        { d: 'M0 22q14 28 0 56z', fill: color.wood },
      ];
    case 'seeded persimmon':
      return [
        { d: half, fill: color.flesh },
        {
          d: drawn(into =>
            smoothLoop(into, [
              [16, 36],
              [26, 46],
              [20, 66],
              [12, 54],
            ]),
          ),
          fill: color.wood,
        },
      ];
    default:
      return [
        { d: half, fill: color.flesh },
        { d: 'M0 24v52', stroke: color.rind, 'stroke-width': 5 },
      ];
  }
}

/** What stands above or on the fruit. */
function topOf(kind: FruitKind): SymbolPath[] {
  switch (kind) {
    case 'pomegranate':
      return [
        {
          d: 'M-13 3c0-8-4-14-8-22l13 9 8-11 8 11 13-9c-4 8-8 14-8 22z',
          fill: color.skin,
          stroke: color.edge,
        },
      ];
    case 'persimmon':
    case 'seeded persimmon':
      return [
        {
          d: 'M0 6c-12-14-34-12-40-2 10 2 18 6 22 12 8 0 14-4 18-10 4 6 10 10 18 10 4-6 12-10 22-12-6-10-28-12-40 2z',
          fill: color.leaf,
          stroke: color.line,
        },
      ];
    case 'fig':
      return [{ d: 'M-6 1l2-9h9l1 9z', fill: color.wood, stroke: color.edge }];
    default:
      return [{ d: 'M0 4q1-9 6-13', stroke: color.wood, 'stroke-width': 3 }];
  }
}

/** Drupelets, as rows of dots; the outline of such a fruit is their edge. */
function drupelets(body: Body): Point[] {
  return Array.from({ length: 8 }, (_, row) => row).flatMap(row => {
    const y = 7 + row * 12.3;
    const radius = Math.max(0, body.radiusAt(y) - 8);
    const count = row % 2 === 0 ? 3 : 4;
    return Array.from({ length: count }, (_, i): Point => [(i / (count - 1) - 0.5) * 2 * radius, y]);
  });
}

/** The paths of a symbol, from back to front. */
function smallPlate(kind: FruitKind, shape: FruitShape): SymbolPath[] {
  const body = bodyOf({ ...traits, shape }, looks[kind]);
  const outline = drawn(into => body.outline(into));
  const blush = drawn(into => {
    for (const across of [-0.84, -0.64]) {
      into.move(body.on(0.45, across));
      into.bend(body.on(0.6, across), body.on(0.75, across));
    }
  });
  if (kind === 'cluster') {
    const bumps = dotted(drupelets(body));
    return [
      ...topOf(kind),
      { d: bumps, stroke: color.edge, 'stroke-width': 22 },
      { d: bumps, stroke: color.skin, 'stroke-width': 16 },
      ...insideOf(kind, body),
    ];
  }
  return [
    { d: outline, fill: color.skin },
    {
      d: blush,
      stroke: color.blush,
      'stroke-width': 8,
    },
    ...insideOf(kind, body),
    { d: outline, stroke: color.edge },
    ...topOf(kind),
  ];
}

/** Name of a symbol in the file of small plates. */
export function symbolId(kind: FruitKind, shape: FruitShape): string {
  return `${kind.replace(' ', '-')}-${shape}`;
}

const attributes = (path: SymbolPath): string =>
  Object.entries(path)
    .map(([name, value]) => ` ${name}="${value}"`)
    .join('');

/** A symbol as SVG. Lines without a width of their own keep one px whatever the stretch. */
export function symbolOf(kind: FruitKind, shape: FruitShape): string {
  const paths = smallPlate(kind, shape).map(path => {
    const fixed = path.stroke !== undefined && path['stroke-width'] === undefined;
    return `<path${attributes(path)}${fixed ? ' vector-effect="non-scaling-stroke"' : ''}/>`;
  });
  return `<symbol id="${symbolId(kind, shape)}" viewBox="-50 0 100 100" preserveAspectRatio="none" overflow="visible" fill="none" stroke-linecap="round" stroke-linejoin="round">${paths.join('')}</symbol>`;
}
