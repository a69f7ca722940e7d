/** Fruit on the twig. */

import type { Random } from '../../src/core/random.ts';
import { about, away, ellipse, ink, leaf, limb, lit, type Point, path, sheet, smooth } from './ink.ts';
import { bark, bud } from './wood.ts';

/** A ripe berry made of beads. */
function berry(random: Random, top: Point, length: number, degrees: number): string {
  const beads = Array.from({ length: 9 }, (_, ring) => {
    const along = (ring + 0.5) / 9;
    const half = length * 0.24 * Math.sin(Math.PI * (0.14 + 0.8 * along));
    return [-1, -0.35, 0.35, 1].map(across => {
      const at = away(away(top, length * along, degrees), about(random, across * half, 3), degrees + 90);
      return (
        ellipse(at, 19, 19, 0, { fill: 'url(#bead)', stroke: '#1f0a1c', width: 1.6 }) +
        ellipse([at[0] - 6, at[1] - 7], 4.5, 3, -30, { fill: '#d9b5d5', opacity: 0.75 })
      );
    });
  });
  return (
    path(smooth([away(top, 46, degrees + 180), top]), { stroke: '#73803f', width: 7 }) + beads.flat().join('')
  );
}

/** A mulberry twig with leaves and three berries. */
export function mulberryTwig(random: Random): string {
  const twig: Point[] = [
    [130, 300],
    [420, 330],
    [760, 300],
    [1100, 350],
    [1420, 320],
  ];
  const green = { length: 470, width: 330, teeth: 11 };
  return sheet(
    1600,
    1200,
    lit('bead', '#7c3c74', '#431540', '#1d0920') + lit('leaf', '#a4b56a', '#71883f', '#4c6430'),
    [
      leaf([400, 330], 190, { ...green, fill: 'url(#leaf)' }),
      leaf([1130, 350], 158, { ...green, length: 500, fill: 'url(#leaf)' }),
      leaf([1400, 322], 62, { ...green, length: 170, width: 110, fill: 'url(#leaf)' }),
      limb(twig, 30, 12, bark),
      bud([250, 300], 20),
      bud([930, 312], 24),
      berry(random, [640, 372], 250, 186),
      berry(random, [800, 366], 270, 174),
      berry(random, [930, 392], 215, 168),
    ].join(''),
  );
}

/** A zigzag jujube twig with thorns, small leaves and four fruits. */
export function jujubeTwig(random: Random): string {
  const twig: Point[] = [
    [170, 250],
    [430, 330],
    [640, 260],
    [900, 350],
    [1120, 280],
    [1430, 370],
  ];
  const thorns = twig.slice(1, -1).map((at, i) =>
    path(smooth([away(at, 7, 0), away(at, 78, i % 2 === 0 ? 20 : 165), away(at, 9, 90)]), {
      fill: '#a4713c',
      stroke: ink,
      width: 2.5,
    }),
  );
  const leaves = twig.slice(0, -1).flatMap((at, i) =>
    [0.3, 0.62].map((along, j) => {
      const next = twig[i + 1]!;
      const from: Point = [at[0] + (next[0] - at[0]) * along, at[1] + (next[1] - at[1]) * along];
      return leaf(from, j === 0 ? about(random, 28, 12) : about(random, 150, 12), {
        length: about(random, 170, 22),
        width: 84,
        teeth: 0,
        fill: 'url(#leaf)',
      });
    }),
  );
  const fruits = (
    [
      [520, 700],
      [745, 640],
      [930, 760],
      [1160, 690],
    ] as const
  ).map(([x, y], i) => {
    const hang = twig[i + 1]!;
    return (
      path(smooth([hang, [(hang[0] + x) / 2 + 12, (hang[1] + y) / 2], [x, y - 128]]), {
        stroke: '#73803f',
        width: 6,
      }) +
      ellipse([x, y], 104, 136, about(random, 0, 7), { fill: 'url(#fruit)', stroke: ink, width: 4 }) +
      ellipse([x, y - 122], 24, 9, 0, { fill: '#7c5a2c', stroke: ink, width: 2 }) +
      ellipse([x - 38, y - 46], 13, 34, 16, { fill: '#ffe2ae', opacity: 0.5 })
    );
  });
  return sheet(
    1600,
    1200,
    lit('fruit', '#dd9a4e', '#a8552a', '#642a17') + lit('leaf', '#b3c677', '#7f9a48', '#587a35'),
    [...leaves, limb(twig, 28, 12, '#8a6f58'), ...thorns, ...fruits].join(''),
  );
}
