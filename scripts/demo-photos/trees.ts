/** Young trees, twigs and a layer. */

import type { Random } from '../../src/core/random.ts';
import {
  about,
  away,
  ellipse,
  ink,
  leaf,
  limb,
  lit,
  type Point,
  path,
  shadow,
  sheet,
  smooth,
} from './ink.ts';

const bark = '#8c7353';

/** A winter bud on the side of a stem. */
function bud(at: Point, degrees: number): string {
  const tip = away(at, 30, degrees);
  return path(smooth([away(at, 9, degrees - 90), tip, away(at, 9, degrees + 90)], true), {
    fill: '#6f5236',
    stroke: ink,
    width: 2,
  });
}

/** A wavering line of roots, thinner towards the end. */
function root(random: Random, from: Point, degrees: number, length: number, thickness: number): string {
  const points: Point[] = [from];
  let [at, heading] = [from, degrees];
  for (let i = 0; i < 6; i += 1) {
    heading += about(random, 0, 16);
    at = away(at, length / 6, heading);
    points.push(at);
  }
  const hairs = points
    .slice(2)
    .map(point =>
      path(smooth([point, away(point, about(random, 34, 14), heading + about(random, 0, 75))]), {
        stroke: '#9b7b55',
        width: 2,
      }),
    );
  return limb(points, thickness, 2, '#b08f66') + hairs.join('');
}

/** A leafless whip in a round pot. */
export function pottedWhip(random: Random): string {
  const [width, height] = [1200, 1600];
  const stem: Point[] = [
    [600, 1130],
    [594, 960],
    [606, 780],
    [596, 600],
    [608, 420],
    [602, 250],
  ];
  const side: Point[] = [
    [600, 870],
    [650, 790],
    [690, 680],
    [704, 560],
  ];
  const buds = [
    bud([590, 1010], -50),
    bud([608, 900], 45),
    bud([596, 740], -45),
    bud([606, 640], 45),
    bud([596, 520], -42),
    bud([608, 400], 42),
    bud([604, 256], 2),
    bud([664, 764], -40),
    bud([700, 640], 50),
    bud([704, 566], 4),
  ];
  const mix = Array.from({ length: 60 }, () => {
    const at: Point = [about(random, 600, 235), about(random, 1138, 22)];
    return ellipse(at, about(random, 9, 4), about(random, 5, 2), random.uniform() * 180, {
      fill: random.uniform() < 0.5 ? '#4b3826' : '#7a6044',
    });
  });
  return sheet(
    width,
    height,
    lit('pot', '#7d7f7b', '#565a58', '#34383a'),
    [
      shadow([620, 1490], 360, 44),
      path('M335 1150 L385 1470 Q600 1520 815 1470 L865 1150 Z', {
        fill: 'url(#pot)',
        stroke: ink,
        width: 4,
      }),
      ellipse([600, 1140], 285, 58, 0, { fill: '#44484a', stroke: ink, width: 4 }),
      ellipse([600, 1142], 258, 46, 0, { fill: '#5b452e' }),
      ...mix,
      limb(side, 18, 9, bark),
      limb(stem, 34, 14, bark),
      ...buds,
      path('M612 700 q70 30 96 92', { stroke: '#8d8a80', width: 4 }),
      path('M676 776 l82 22 l-18 66 l-82 -22 z', { fill: '#fffaf0', stroke: ink, width: 3 }),
      path('M690 806 l40 11 M684 826 l46 12', { stroke: ink, width: 2.5, opacity: 0.6 }),
      path('M352 1262 Q600 1312 848 1262', { stroke: '#2b2f30', width: 3, opacity: 0.5 }),
    ].join(''),
  );
}

/** Five young trees tied in a bundle, roots bare, lying on the bench. */
export function bareRootBundle(random: Random): string {
  const [width, height] = [1600, 1200];
  const trees = [-2, 2, -1, 1, 0].map(row => {
    const y = 600 + row * 34;
    const crown: Point = [610 + Math.abs(row) * 8, y];
    const stem: Point[] = [
      crown,
      [800, y + row * 3],
      [1000, y + row * 10],
      [1200, y + row * 24],
      [about(random, 1420, 60), y + row * 44],
    ];
    const roots = Array.from({ length: 8 }, (_, i) =>
      root(random, crown, 200 + i * 20 + about(random, 0, 8), about(random, 300, 60), about(random, 13, 4)),
    );
    const buds = [860, 960, 1070, 1190, 1300].map((x, i) =>
      bud([x, y + row * ((x - 700) / 22) + (i % 2 === 0 ? -8 : 8)], i % 2 === 0 ? 55 : 125),
    );
    return roots.join('') + limb(stem, 30, 10, bark) + buds.join('');
  });
  const ties = [760, 1010].map(x => {
    const spread = x === 760 ? 96 : 112;
    return (
      path(`M${x} ${600 - spread} q26 ${spread} 0 ${spread * 2}`, { stroke: '#caa75a', width: 13 }) +
      path(`M${x + 14} ${600 - spread + 2} q26 ${spread} 0 ${spread * 2 - 4}`, {
        stroke: '#b48f43',
        width: 7,
      })
    );
  });
  return sheet(
    width,
    height,
    '',
    [
      shadow([820, 800], 640, 60),
      ...trees,
      ...ties,
      path('M776 692 q-40 60 -14 120', { stroke: '#b48f43', width: 5 }),
      path('M716 806 l100 8 l-8 96 l-100 -8 z', { fill: '#fffaf0', stroke: ink, width: 3 }),
      path('M732 838 l62 5 M730 860 l62 5', { stroke: ink, width: 2.5, opacity: 0.6 }),
    ].join(''),
  );
}

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
  const thorns = twig
    .slice(1, -1)
    .map((at, i) =>
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

/** A branch with a wrapped ball on it, where roots are forming. */
export function airLayer(random: Random): string {
  const branch: Point[] = [
    [170, 1080],
    [420, 880],
    [700, 690],
    [980, 500],
    [1260, 320],
    [1440, 190],
  ];
  const green = { length: 380, width: 280, teeth: 0, fill: 'url(#leaf)' };
  const moss = Array.from({ length: 260 }, () => {
    const at = away([705, 690], 165 * Math.sqrt(random.uniform()), random.uniform() * 360);
    return path(smooth([at, away(at, about(random, 30, 12), random.uniform() * 360)]), {
      stroke: random.uniform() < 0.5 ? '#9aa066' : '#b9a877',
      width: 3,
      opacity: 0.8,
    });
  });
  const roots = Array.from({ length: 9 }, (_, i) =>
    root(random, away([705, 690], 22, i * 40), i * 40 + about(random, 0, 14), about(random, 135, 18), 8),
  );
  return sheet(
    1600,
    1200,
    lit('leaf', '#a9ba72', '#748c44', '#4c6632') + lit('moss', '#cfc08c', '#a99a63', '#716a42'),
    [
      leaf([1120, 410], 118, green),
      leaf([1010, 480], -22, green),
      leaf([1290, 300], 172, { ...green, length: 300 }),
      leaf([1300, 290], -40, { ...green, length: 250, width: 190 }),
      limb(branch, 58, 26, bark),
      path(
        smooth(
          [
            [520, 630],
            [590, 540],
            [720, 500],
            [850, 540],
            [905, 640],
            [880, 770],
            [790, 860],
            [660, 880],
            [545, 810],
          ],
          true,
        ),
        { fill: 'url(#moss)', stroke: ink, width: 4 },
      ),
      ...moss,
      ...roots,
      path(
        smooth(
          [
            [520, 630],
            [590, 540],
            [720, 500],
            [850, 540],
            [905, 640],
            [880, 770],
            [790, 860],
            [660, 880],
            [545, 810],
          ],
          true,
        ),
        { fill: '#ffffff', opacity: 0.16 },
      ),
      path(
        smooth([
          [610, 560],
          [580, 650],
          [590, 720],
        ]),
        { stroke: '#ffffff', width: 14, opacity: 0.5 },
      ),
      path('M516 742 q36 92 118 138', { stroke: '#caa75a', width: 13 }),
      path('M806 506 q80 40 112 130', { stroke: '#caa75a', width: 13 }),
      path('M630 878 q-20 46 6 84 M634 880 q22 40 60 56', { stroke: '#caa75a', width: 7 }),
    ].join(''),
  );
}
