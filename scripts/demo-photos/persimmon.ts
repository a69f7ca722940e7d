/** A persimmon, whole and cut across. */

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
} from './ink.ts';

const wide = 1600;
const high = 1200;

/** Four broad sepals under a stalk. */
function calyx([x, y]: Point, size: number): string {
  return [45, 135, 225, 315]
    .map(turn => {
      const tip = away([x, y], size, turn);
      const points: Point[] = [
        [x, y],
        away([x, y], size * 0.72, turn - 38),
        [x + (tip[0] - x) * 1.12, y + (tip[1] - y) * 0.62],
        away([x, y], size * 0.72, turn + 38),
      ];
      return path(
        smooth(
          points.map(([px, py]): Point => [px, y + (py - y) * 0.55]),
          true,
        ),
        { fill: '#8a8f52', stroke: ink, width: 3 },
      );
    })
    .join('');
}

/** A whole persimmon and one cut across. */
export function cutPersimmon(random: Random): string {
  const squarish = (at: Point, rx: number, ry: number) =>
    smooth(
      around(
        at,
        turn => {
          const corner = 1 + 0.045 * Math.cos(turn * 8 * Math.PI + Math.PI);
          return [rx * corner, ry * corner];
        },
        40,
      ),
      true,
    );
  const cut: Point = [1070, 720];
  const lobes = Array.from({ length: 8 }, (_, i) => {
    const turn = i * 45 + 22;
    const points: Point[] = [
      away(cut, 34, turn),
      away(cut, 118, turn - 11),
      away(cut, about(random, 172, 6), turn),
      away(cut, 118, turn + 11),
    ];
    return path(
      smooth(
        points.map(([x, y]): Point => [x, cut[1] + (y - cut[1]) * 0.9]),
        true,
      ),
      { fill: '#d9701f', stroke: '#b4560f', width: 2.5, opacity: 0.75 },
    );
  });
  const flecks = Array.from({ length: 150 }, () => {
    const at = away(cut, 60 + 220 * Math.sqrt(random.uniform()), random.uniform() * 360);
    return ellipse(
      [at[0], cut[1] + (at[1] - cut[1]) * 0.88],
      about(random, 4, 2),
      1.6,
      random.uniform() * 180,
      { fill: '#fbd08c', opacity: 0.6 },
    );
  });
  return sheet(
    wide,
    high,
    lit('skin', '#ffb65c', '#ec7a1e', '#ae4708') + lit('flesh', '#ffc46b', '#f6983a', '#e27b1d'),
    [
      shadow([540, 850], 350, 46),
      path(squarish([520, 590], 345, 285), { fill: 'url(#skin)', stroke: ink, width: 4 }),
      path(
        smooth([
          [330, 430],
          [300, 600],
          [345, 770],
        ]),
        { stroke: '#ffd79b', width: 12, opacity: 0.45 },
      ),
      calyx([530, 372], 190),
      limb(
        [
          [530, 372],
          [540, 320],
          [572, 276],
        ],
        30,
        20,
        '#6f5c3c',
      ),
      shadow([1080, 1010], 350, 40),
      path(squarish(cut, 338, 300), { fill: 'url(#skin)', stroke: ink, width: 4 }),
      path(squarish([cut[0], cut[1] - 6], 314, 278), { fill: 'url(#flesh)' }),
      ...flecks,
      ...lobes,
      ellipse(cut, 30, 27, 0, { fill: '#fbe3b4', stroke: '#b4560f', width: 2 }),
    ].join(''),
  );
}
