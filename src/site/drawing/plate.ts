/**
 * A plate of a fruit, drawn to scale from its traits: whole on the left, cut along its length on the right. Pure: traits in, paths in
 * millimeters out. Lengths and widths are those of the record; stalks, and the crown of a pomegranate, stand outside them.
 */

import { randomFromText } from '../../core/random.ts';
import type { Fruit } from '../../core/records/cultivar.ts';
import { fruitSizeInWords } from '../words/measures.ts';
import { eyeWords, sentence, shapeWords } from '../words/words.ts';
import { drupeInside, drupeOutside } from './plate/drupe.ts';
import { figInside, figOutside } from './plate/fig.ts';
import type { FruitKind } from './plate/kinds.ts';
import type { Desk, Layer } from './plate/layers.ts';
import { clusterInside, clusterOutside } from './plate/mulberry.ts';
import { pen } from './plate/pen.ts';
import { persimmonInside, persimmonOutside } from './plate/persimmon.ts';
import { pomegranateInside, pomegranateOutside } from './plate/pomegranate.ts';

/** Room around the fruit, mm: above for a stalk or crown, and at the sides. */
export interface Canvas {
  /** Of one view. */
  widthMm: number;
  aboveMm: number;
  lengthMm: number;
}

/** Attributes of a path. */
interface PlatePath {
  class: string;
  d: string;
  transform: string | undefined;
  'stroke-width': number | undefined;
}

export interface Plate {
  /** `viewBox`, in steps of a grid. */
  box: string;
  /** Size on the page, px. */
  width: number;
  height: number;
  /** Classes that carry the colors. */
  colors: string;
  /** Whole and cut, each with its place. */
  views: { move: string; paths: PlatePath[] }[];
  /** A bar of 10 mm. */
  scale: string;
  title: string;
  description: string;
}

/** Distance between the lines of the shading on the page, px. */
const SPACING_PX = 5.2;
/** Steps of the grid to the px of the page: half a px is finer than a hand. */
const GRID_PER_PX = 1;
const MARGIN_MM = 1.5;
export const SCALE_BAR_MM = 10;
export const barInWords = '10 mm (0.4 in)';
/** Room for the bar, px. */
const BAR_PX = 14;

function views(fruit: Fruit, kind: FruitKind, desk: (name: string) => Desk): [Layer[], Layer[]] {
  const [outside, inside] = [desk('outside'), desk('inside')];
  switch (kind) {
    case 'fig':
      return [figOutside(fruit, outside), figInside(fruit, inside)];
    case 'pomegranate':
      return [pomegranateOutside(fruit, outside), pomegranateInside(fruit, inside)];
    case 'persimmon':
    case 'seeded persimmon':
      return [persimmonOutside(fruit, outside), persimmonInside(fruit, inside, kind === 'seeded persimmon')];
    case 'cluster':
      return [clusterOutside(fruit, outside), clusterInside(fruit, inside)];
    default:
      return [drupeOutside(fruit, outside, kind === 'jujube'), drupeInside(fruit, inside, kind === 'jujube')];
  }
}

/** Room the stalk or crown takes above the fruit, mm. */
function roomAbove(fruit: Fruit, kind: FruitKind): number {
  if (kind === 'pomegranate') return fruit.widthMm * 0.22;
  if (kind === 'cluster') return Math.min(9, fruit.lengthMm * 0.3);
  if (kind === 'fig') return fruit.widthMm * 0.08 + 2;
  return Math.max(3, fruit.lengthMm * 0.13);
}

/** Widest and longest a large plate is drawn, px, and its largest scale, px to the millimeter: a berry is not blown up to a melon. */
const LARGE_PX = 290;
const LARGEST_SCALE = 7;

/** The scale at which a canvas fills a large plate, px to the millimeter, in quarters. */
export function largeScale({ widthMm, lengthMm, aboveMm }: Canvas): number {
  const fitting = Math.min(LARGE_PX / (2 * widthMm + 4 * MARGIN_MM), LARGE_PX / (lengthMm + aboveMm));
  return Math.min(LARGEST_SCALE, Math.max(1, Math.floor(fitting * 4) / 4));
}

/** The least canvas that holds a fruit. */
export function canvasOf(fruit: Fruit, kind: FruitKind): Canvas {
  return { widthMm: fruit.widthMm, aboveMm: roomAbove(fruit, kind), lengthMm: fruit.lengthMm };
}

/** Strokes of the bar: from and to, mm along it and shares of its room up and down. */
const barStrokes = [
  [
    [0, -0.15],
    [0, 0.15],
  ],
  [
    [0, 0],
    [SCALE_BAR_MM, 0],
  ],
  [
    [SCALE_BAR_MM, -0.15],
    [SCALE_BAR_MM, 0.15],
  ],
] as const;

/** Classes that carry the colors of a fruit. */
export function colorsOf({ skin, blush, flesh }: Fruit): string {
  return `skin-${skin} flesh-${flesh}${blush === null ? '' : ` blush-${blush}`}`;
}

/** The plate in words: shape, skin, flesh, eye and size. */
export function plateInWords(fruit: Fruit): string {
  const { skin, blush, flesh, shape, eye, lengthMm, widthMm } = fruit;
  const cheek = blush === null || blush === skin ? '' : ` with ${blush}`;
  const opening = eye === 'none' ? '' : ` The eye is ${eyeWords[eye]}.`;
  return `${sentence(shapeWords[shape])}, ${fruitSizeInWords(lengthMm, widthMm)}. Skin ${skin}${cheek}; cut, the flesh is ${flesh}.${opening}`;
}

/**
 * Draws a fruit at a scale, px to the millimeter. `seed` makes it an individual: the same text gives the same drawing. Several plates on
 * one canvas and scale are to scale with each other.
 */
export function plate(
  fruit: Fruit,
  kind: FruitKind,
  { seed, pxPerMm, canvas = canvasOf(fruit, kind) }: { seed: string; pxPerMm: number; canvas?: Canvas },
): Plate {
  const perMm = GRID_PER_PX * pxPerMm;
  const desk = (name: string): Desk => ({
    pen: () => pen(perMm),
    perMm,
    random: randomFromText(`${seed} ${name}`),
    spacingMm: SPACING_PX / pxPerMm,
  });
  const [outside, inside] = views(fruit, kind, desk);
  const barMm = BAR_PX / pxPerMm;
  const widthMm = 2 * canvas.widthMm + 4 * MARGIN_MM;
  const heightMm = canvas.aboveMm + canvas.lengthMm + 2 * MARGIN_MM + barMm;
  const top = canvas.aboveMm + MARGIN_MM + (canvas.lengthMm - fruit.lengthMm);
  const steps = (mm: number) => Math.round(mm * perMm);
  const view = (middleMm: number, layers: Layer[]) => ({
    move: `translate(${steps(middleMm)} ${steps(top)})`,
    paths: layers.map(({ ink, data, move, strokeMm }) => ({
      class: ink,
      d: data,
      transform: move,
      'stroke-width': strokeMm === undefined ? undefined : steps(strokeMm),
    })),
  });
  const bar = pen(perMm);
  for (const [from, to] of barStrokes) {
    bar.move([MARGIN_MM + from[0], heightMm - barMm * (0.5 - from[1])]);
    bar.line([MARGIN_MM + to[0], heightMm - barMm * (0.5 - to[1])]);
  }
  return {
    box: `0 0 ${steps(widthMm)} ${steps(heightMm)}`,
    width: Math.round(widthMm * pxPerMm),
    height: Math.round(heightMm * pxPerMm),
    colors: colorsOf(fruit),
    views: [
      view(MARGIN_MM + canvas.widthMm / 2, outside),
      view(3 * MARGIN_MM + canvas.widthMm * 1.5, inside),
    ],
    scale: bar.data(),
    title: 'The fruit, whole and cut',
    description: plateInWords(fruit),
  };
}

const attributes = (of: object): string =>
  Object.entries(of)
    .map(([name, value]) => ` ${name}="${value}"`)
    .join('');

function pathMarkup({ class: ink, d, transform, 'stroke-width': stroke }: PlatePath): string {
  const moved = transform === undefined ? '' : ` transform="${transform}"`;
  return `<path class="${ink}" d="${d}"${moved}${stroke === undefined ? '' : ` stroke-width="${stroke}"`}/>`;
}

/** What stands inside the SVG of a plate. It holds nothing that was written by hand: numbers, classes and words of our own lists. */
export function plateMarkup({ views: drawn, scale, title, description }: Plate, id: string): string {
  const parts = drawn.map(
    ({ move, paths }) => `<g transform="${move}">${paths.map(pathMarkup).join('')}</g>`,
  );
  return `<title id="plate-${id}">${title}</title><desc id="plate-${id}-words">${description}</desc>${parts.join('')}<path class="bar" d="${scale}"/>`;
}

/** Attributes of the SVG of a plate. */
export function plateAttributes(
  { colors, box, width, height }: Plate,
  id: string,
): Record<string, string | number> {
  return {
    class: `plate ${colors}`,
    viewBox: box,
    width,
    height,
    role: 'img',
    'aria-labelledby': `plate-${id} plate-${id}-words`,
  };
}

/** A plate as a file or a part of one. */
export function plateSvg(drawn: Plate, id: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg"${attributes(plateAttributes(drawn, id))}>${plateMarkup(drawn, id)}</svg>`;
}
