/** Young trees, and a layer on its branch. */

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
import { bark, bud, root } from './wood.ts';

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
