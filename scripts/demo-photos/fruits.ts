/** A fig and a pomegranate, cut open. */

import type { Random } from '../../src/core/random.ts';
import {
  about,
  around,
  away,
  ellipse,
  ink,
  limb,
  lit,
  type Point,
  path,
  shadow,
  sheet,
  smooth,
  turned,
} from './ink.ts';

const wide = 1600;
const high = 1200;

/** Outline of a fig, lengths as shares of its height. */
export interface FigForm {
  /** Height, and half of the greatest width, px. */
  heightPx: number;
  halfPx: number;
  /** Where it is widest, from stalk (0) to eye (1). */
  widest: number;
  /** Half-width of the neck, as a share of the greatest. */
  neck: number;
  /** 1: shoulders of a ball; 0: the hollow flanks of a pear. */
  shoulders: 0 | 1;
  /** Middle of the flesh and half its height, as shares of the height. */
  flesh: readonly [middle: number, half: number];
}

export const pearFig: FigForm = {
  heightPx: 740,
  halfPx: 285,
  widest: 0.64,
  neck: 0.17,
  shoulders: 0,
  flesh: [0.58, 0.305],
};
/** A little wider than long, with a short neck. */
export const roundFig: FigForm = {
  heightPx: 590,
  halfPx: 310,
  widest: 0.55,
  neck: 0.15,
  shoulders: 1,
  flesh: [0.54, 0.35],
};

/** Half-width of a fig from neck to eye, as a share of its greatest. */
function figProfile({ widest, neck, shoulders }: FigForm): (down: number) => number {
  return down => {
    if (down > widest) return Math.sqrt(Math.max(0, 1 - ((down - widest) / (1 - widest)) ** 2));
    const begins = shoulders === 1 ? 0.04 : 0.08;
    const rise = Math.min(1, Math.max(0, (down - begins) / (widest - begins)));
    const flank = shoulders === 1 ? Math.sqrt(1 - (1 - rise) ** 2) : rise * rise * (3 - 2 * rise);
    return neck * Math.min(1, 0.75 + down * 4) + (1 - neck) * flank;
  };
}

export interface FigColors {
  skin: readonly [light: string, middle: string, dark: string];
  pith: string;
  flesh: readonly [light: string, middle: string, dark: string];
  seed: string;
}

/** A whole fig behind a halved one. */
export function cutFig({ skin, pith, flesh, seed }: FigColors, form: FigForm, random: Random): string {
  const profile = figProfile(form);
  const outline = (at: Point, height: number, half: number) =>
    smooth(
      turned(at, height, down => half * profile(down)),
      true,
    );

  // Both stand on the same ground whatever their height.
  const whole: Point = [545, 930 - form.heightPx];
  const ribs = [-0.72, -0.4, -0.08, 0.26, 0.6].map(share => {
    const points = Array.from({ length: 9 }, (_, i): Point => {
      const down = 0.16 + (0.78 * i) / 8;
      return [whole[0] + form.halfPx * profile(down) * share, whole[1] + form.heightPx * down];
    });
    return path(smooth(points), { stroke: ink, width: 2.5, opacity: 0.22 });
  });

  const [height, width] = [form.heightPx - 20, form.halfPx + 5];
  const half: Point = [1040, 1050 - height];
  const middle: Point = [half[0], half[1] + height * form.flesh[0]];
  const flower = around(
    middle,
    turn => {
      const rough = about(random, 1, 0.035);
      const narrow = 1 - 0.2 * Math.max(0, Math.cos(turn * 2 * Math.PI));
      return [width * 0.74 * narrow * rough, height * form.flesh[1] * rough];
    },
    48,
  );
  const threads = Array.from({ length: 230 }, () => {
    const turn = random.uniform() * 360;
    const out = about(random, 0.86, 0.12);
    const squeeze = (distance: number): Point => {
      const [x, y] = away([0, 0], distance, turn);
      return [middle[0] + x * 0.94, middle[1] + y * 0.98];
    };
    return path(smooth([squeeze(about(random, 75, 30)), squeeze(out * 205)]), {
      stroke: random.uniform() < 0.5 ? flesh[0] : flesh[2],
      width: about(random, 4, 1.5),
      opacity: 0.5,
    });
  });
  const seeds = Array.from({ length: 170 }, () => {
    const turn = random.uniform() * 360;
    const [x, y] = away([0, 0], 60 + 128 * Math.sqrt(random.uniform()), turn);
    return ellipse([middle[0] + x * 0.98, middle[1] + y], 5.4, 4.2, turn, {
      fill: seed,
      stroke: ink,
      width: 0.8,
    });
  });
  const hollow = around(middle, () => [about(random, 36, 8), about(random, 52, 10)], 18);

  return sheet(
    wide,
    high,
    lit('skin', ...skin) + lit('flesh', ...flesh),
    [
      shadow([560, 935], 330, 42),
      shadow([1060, 1060], 340, 46),
      limb(
        [
          [545, whole[1] + 35],
          [552, whole[1] - 20],
          [575, whole[1] - 70],
        ],
        38,
        26,
        '#7d8450',
      ),
      path(outline(whole, form.heightPx, form.halfPx), { fill: 'url(#skin)', stroke: ink, width: 4 }),
      ...ribs,
      ellipse([545, 926], 24, 7, 0, { fill: skin[2], stroke: ink, width: 2.5 }),
      limb(
        [
          [half[0], half[1] + 42],
          [half[0] - 6, half[1] - 20],
          [half[0] - 24, half[1] - 68],
        ],
        38,
        26,
        '#7d8450',
      ),
      path(outline(half, height, width), { fill: skin[1], stroke: ink, width: 4 }),
      path(outline([half[0], half[1] + 26], height - 44, width - 16), { fill: pith }),
      path(smooth(flower, true), { fill: 'url(#flesh)' }),
      ...threads,
      ...seeds,
      path(smooth(hollow, true), { fill: flesh[2], opacity: 0.55 }),
      path(
        smooth([
          [half[0], half[1] + height - 58],
          [half[0], half[1] + height - 8],
        ]),
        { stroke: skin[2], width: 12 },
      ),
    ].join(''),
  );
}

const crownTeeth = (at: Point, size: number, fill: string) => {
  const points = [-1, -0.72, -0.45, -0.2, 0, 0.2, 0.45, 0.72, 1].map(
    (across, i): Point => [
      at[0] + across * size * (i % 2 === 0 ? 1.05 : 0.75),
      at[1] - (i % 2 === 0 ? size * 1.05 : size * 0.35),
    ],
  );
  const base: Point[] = [
    [at[0] + size * 0.62, at[1] + size * 0.3],
    [at[0] - size * 0.62, at[1] + size * 0.3],
  ];
  const line = [...points, ...base].map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join(' L');
  return path(`M${line}Z`, { fill, stroke: ink, width: 3.5 });
};

/** A pomegranate with a wedge of rind taken off. */
export function cutPomegranate(random: Random): string {
  const center: Point = [800, 640];
  const body = around(
    center,
    turn => {
      const flat = 1 + 0.011 * Math.cos(turn * 12 * Math.PI);
      return [405 * flat, 380 * flat];
    },
    48,
  );
  const openAt: Point = [845, 675];
  const opening = around(openAt, () => [about(random, 278, 10), about(random, 252, 10)], 26);
  const chambers = [20, 92, 164, 236, 308].map(turn =>
    path(smooth([away(openAt, 18, turn), away(openAt, 248, turn + 6)]), { stroke: '#f1dfb4', width: 20 }),
  );
  const grains = [0, 1, 2, 3, 4].flatMap(chamber =>
    [0, 1, 2, 3].flatMap(ring =>
      Array.from({ length: 2 + ring * 2 }, (_, i) => {
        const spread = 48;
        const turn = 56 + chamber * 72 - spread / 2 + (spread * (i + 0.5)) / (2 + ring * 2);
        const at = away(openAt, about(random, 72 + ring * 50, 5), about(random, turn, 2));
        const size = about(random, 24, 2.5);
        return (
          ellipse(at, size * 0.82, size, turn, { fill: 'url(#grain)', stroke: '#5b0f1c', width: 2 }) +
          ellipse(away(at, size * 0.4, 320), size * 0.2, size * 0.13, 320, { fill: '#ffd9d6', opacity: 0.75 })
        );
      }),
    ),
  );
  const loose: Point[] = [
    [330, 1010],
    [392, 1046],
    [1270, 1030],
    [1325, 1002],
    [1226, 1066],
  ];
  return sheet(
    wide,
    high,
    lit('rind', '#ee9a5c', '#c8442f', '#7d1d22') + lit('grain', '#ef6470', '#b3142e', '#64091c'),
    [
      shadow([810, 1015], 420, 52),
      crownTeeth([800, 262], 92, '#b5472f'),
      path(smooth(body, true), { fill: 'url(#rind)', stroke: ink, width: 4 }),
      ...Array.from({ length: 60 }, () => {
        const at = away(center, 390 * Math.sqrt(random.uniform()), random.uniform() * 360);
        return ellipse(at, about(random, 4, 2), about(random, 3, 1), 0, { fill: '#f3b77c', opacity: 0.35 });
      }),
      path(smooth(opening, true), { fill: '#f6e8c6', stroke: ink, width: 3.5 }),
      ...chambers,
      ellipse(openAt, 40, 36, 0, { fill: '#f1dfb4' }),
      ...grains,
      ...loose.map(
        (at, i) =>
          shadow([at[0] + 4, at[1] + 22], 24, 7) +
          ellipse(at, 20, 25, i * 37, { fill: 'url(#grain)', stroke: '#5b0f1c', width: 2 }),
      ),
    ].join(''),
  );
}
