import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Fruit } from '../../core/records/cultivar.ts';
import { eyes, fleshColors, fruitShapes, skinColors } from '../../core/records/cultivar.ts';
import { bodyOf } from './plate/body.ts';
import { type FruitKind, fruitKind } from './plate/kinds.ts';
import { symbolOf } from './plate/small.ts';
import { canvasOf, largeScale, plate, plateInWords, plateSvg, SCALE_BAR_MM } from './plate.ts';

const fig: Fruit = {
  skin: 'violet',
  blush: null,
  flesh: 'red',
  shape: 'pear',
  lengthMm: 46,
  widthMm: 38,
  eye: 'closed',
  splits: 'low',
  rain: 'good',
};

const kinds: FruitKind[] = [
  'fig',
  'pomegranate',
  'persimmon',
  'seeded persimmon',
  'cluster',
  'jujube',
  'plain',
];

/** Kinds and shapes that go together: a cluster is always drawn as one. */
const drawable = kinds.flatMap(kind =>
  fruitShapes.filter(shape => kind === 'cluster' || shape !== 'cluster').map(shape => ({ kind, shape })),
);

const anyFruit = fc.record({
  skin: fc.constantFrom(...skinColors),
  blush: fc.option(fc.constantFrom(...skinColors)),
  flesh: fc.constantFrom(...fleshColors),
  lengthMm: fc.integer({ min: 5, max: 200 }),
  widthMm: fc.integer({ min: 5, max: 200 }),
  eye: fc.constantFrom(...eyes),
  splits: fc.constant('low' as const),
  rain: fc.constant('good' as const),
});
const anyPlate = fc.tuple(anyFruit, fc.constantFrom(...drawable)).map(([fruit, { kind, shape }]) => ({
  fruit: { ...fruit, shape } as Fruit,
  kind,
}));

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** The box around the curves of path data, steps of the grid: follows the commands the pen writes, as SVG 2 (chapter 9) defines them. */
function boxOf(data: string): Box {
  const box: Box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  let [x, y] = [0, 0];
  let start = [0, 0];
  const take = (px: number, py: number) => {
    box.left = Math.min(box.left, px);
    box.right = Math.max(box.right, px);
    box.top = Math.min(box.top, py);
    box.bottom = Math.max(box.bottom, py);
  };
  for (const [, command, rest] of data.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const n = (rest!.match(/-?[\d.]+/g) ?? []).map(Number);
    if (command === 'z') [x, y] = start as [number, number];
    else if (command === 'h') x += n[0]!;
    else if (command === 'c' || command === 'q') {
      const from = [x, y];
      const control = Array.from({ length: n.length / 2 }, (_, i) => [
        from[0]! + n[2 * i]!,
        from[1]! + n[2 * i + 1]!,
      ]);
      const points = [from, ...control];
      for (let step = 0; step <= 40; step += 1) {
        const u = step / 40;
        // De Casteljau's construction of a point on a Bezier curve.
        let level = points;
        while (level.length > 1) {
          level = level
            .slice(1)
            .map((to, i) => [0, 1].map(axis => level[i]![axis]! * (1 - u) + to[axis]! * u));
        }
        take(level[0]![0]!, level[0]![1]!);
      }
      [x, y] = control.at(-1) as [number, number];
    } else {
      const [dx, dy] = n.slice(-2) as [number, number];
      [x, y] = command === 'M' ? [dx, dy] : [x + dx, y + dy];
      if (command === 'M' || command === 'm') start = [x, y];
    }
    take(x, y);
  }
  return box;
}

function outlineBox(fruit: Fruit, kind: FruitKind, pxPerMm = 4): Box {
  const drawn = plate(fruit, kind, { seed: 'one', pxPerMm });
  const outline = drawn.views[0]!.paths.find(path => path.class === 'edge')!;
  return boxOf(outline.d);
}

const withOutline = anyPlate.filter(({ kind }) => kind !== 'cluster');

describe('the scale of a plate', () => {
  it('draws a fruit as long and wide as it is, to the two steps of the grid that rounding can take', () => {
    fc.assert(
      fc.property(withOutline, fc.constantFrom(1, 2, 4), ({ fruit, kind }, pxPerMm) => {
        const { left, right, top, bottom } = outlineBox(fruit, kind, pxPerMm);
        expect(Math.abs(right - left - fruit.widthMm * pxPerMm)).toBeLessThanOrEqual(2);
        expect(Math.abs(bottom - top - fruit.lengthMm * pxPerMm)).toBeLessThanOrEqual(2);
      }),
      { numRuns: 60 },
    );
  });

  it('draws twice as large what is twice as large', () => {
    fc.assert(
      fc.property(
        withOutline.filter(({ fruit }) => fruit.lengthMm <= 100 && fruit.widthMm <= 100),
        ({ fruit, kind }) => {
          const once = outlineBox(fruit, kind);
          const twice = outlineBox(
            { ...fruit, lengthMm: fruit.lengthMm * 2, widthMm: fruit.widthMm * 2 },
            kind,
          );
          for (const side of ['left', 'right', 'top', 'bottom'] as const) {
            expect(Math.abs(twice[side] - 2 * once[side])).toBeLessThanOrEqual(2);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keeps the drupelets of a cluster within its length and width', () => {
    fc.assert(
      fc.property(
        anyPlate.filter(
          ({ kind, fruit }) => kind === 'cluster' && fruit.widthMm >= 8 && fruit.lengthMm >= 12,
        ),
        ({ fruit, kind }) => {
          const drawn = plate(fruit, kind, { seed: 'one', pxPerMm: 4 });
          const boxes = drawn.views[0]!.paths.filter(path => path.class === 'skin bump').map(path =>
            boxOf(path.d),
          );
          const width = Math.max(...boxes.map(box => box.right)) - Math.min(...boxes.map(box => box.left));
          expect(width / 4).toBeLessThanOrEqual(fruit.widthMm * 1.15);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('gives a plate on a larger canvas its size and a bar of 10 mm', () => {
    const small: Fruit = { ...fig, lengthMm: 24, widthMm: 13, shape: 'oval' };
    const canvas = canvasOf(fig, 'fig');
    const [one, other] = [
      plate(fig, 'fig', { seed: 'a', pxPerMm: 3, canvas }),
      plate(small, 'cluster', { seed: 'b', pxPerMm: 3, canvas }),
    ];
    expect(one.box).toBe(other.box);
    expect(one.scale).toBe(other.scale);
    const bar = boxOf(one.scale);
    expect(bar.right - bar.left).toBe(SCALE_BAR_MM * 3);
  });

  it('fills a large plate without blowing up a berry', () => {
    const berry = { widthMm: 8, aboveMm: 3, lengthMm: 9 };
    expect(largeScale(berry)).toBe(7);
    expect(largeScale({ widthMm: 92, aboveMm: 20, lengthMm: 84 })).toBe(1.5);
    expect(largeScale({ widthMm: 200, aboveMm: 44, lengthMm: 200 })).toBe(1);
  });
});

// Outlines as descriptors of cultivars tell them apart: a round fig is full at its shoulders, a pear narrows into a long neck, a heart is widest near the stalk. Common practice, no source.
describe('a plate has the outline that the record names', () => {
  const halfAt = (shape: Fruit['shape'], share: number, neck: boolean) => {
    const body = bodyOf({ ...fig, shape }, { neck });
    return body.radiusAt(body.lengthMm * share) / body.halfMm;
  };

  it.each([true, false])('of fruits with a neck: %s', neck => {
    expect(halfAt('round', 0.25, neck)).toBeGreaterThan(0.7);
    expect(halfAt('pear', 0.25, neck)).toBeLessThan(0.55);
    expect(halfAt('flattened', 0.25, neck)).toBeGreaterThan(halfAt('round', 0.25, neck));
    expect(halfAt('heart', 0.25, neck)).toBeGreaterThan(halfAt('heart', 0.75, neck));
    expect(halfAt('round', 0.75, neck)).toBeGreaterThan(0.8);
  });
});

describe('a plate', () => {
  it('is the same again for the same cultivar, and another individual for another', () => {
    fc.assert(
      fc.property(anyPlate, ({ fruit, kind }) => {
        const draw = (seed: string) => plateSvg(plate(fruit, kind, { seed, pxPerMm: 2 }), 'x');
        expect(draw('one')).toBe(draw('one'));
      }),
      { numRuns: 30 },
    );
    const draw = (seed: string) => plateSvg(plate(fig, 'fig', { seed, pxPerMm: 4 }), 'x');
    expect(draw('one')).not.toBe(draw('two'));
  });

  it('never holds a number that is none, whatever the traits', () => {
    fc.assert(
      fc.property(anyPlate, fc.constantFrom(1, 1.25, 3, 7), ({ fruit, kind }, pxPerMm) => {
        expect(plateSvg(plate(fruit, kind, { seed: 'x', pxPerMm }), 'x')).not.toMatch(
          /NaN|Infinity|undefined|e[-+]\d/,
        );
      }),
      { numRuns: 80 },
    );
  });

  it('draws no blush and no eye where there are none', () => {
    const inks = (fruit: Fruit) =>
      plate(fruit, 'fig', { seed: 'x', pxPerMm: 4 }).views[0]!.paths.map(path => path.class);
    expect(inks(fig)).not.toContain('blush');
    expect(inks({ ...fig, blush: 'red' })).toContain('blush');
    expect(inks({ ...fig, eye: 'none' })).not.toContain('eye');
    expect(inks({ ...fig, eye: 'sealed' })).toContain('honey');
  });

  it('says in words what it shows', () => {
    expect(plateInWords({ ...fig, blush: 'green', eye: 'half-open' })).toBe(
      'Pear-shaped, 1.8 × 1.5 in (46 × 38 mm). Skin violet with green; cut, the flesh is red. The eye is half open.',
    );
    expect(plateInWords({ ...fig, eye: 'none' })).toBe(
      'Pear-shaped, 1.8 × 1.5 in (46 × 38 mm). Skin violet; cut, the flesh is red.',
    );
  });

  it('weighs little: 1.75 kB compressed at most at the size of a page with a blush, half of them under 1.6', () => {
    const weights = drawable.map(({ kind, shape }) => {
      const size = { fig: [46, 42], pomegranate: [78, 84], cluster: [28, 14] }[kind as string] ?? [50, 46];
      const fruit: Fruit = { ...fig, shape, lengthMm: size[0]!, widthMm: size[1]!, blush: 'red' };
      const drawn = plate(fruit, kind, {
        seed: `${kind} ${shape}`,
        pxPerMm: largeScale(canvasOf(fruit, kind)),
      });
      return gzipSync(plateSvg(drawn, 'x')).length;
    });
    weights.sort((a, b) => a - b);
    expect(weights.at(-1)).toBeLessThanOrEqual(1750);
    expect(weights[Math.floor(weights.length / 2)]).toBeLessThanOrEqual(1600);
  });
});

describe('the surface of a fruit', () => {
  it.each(drawable)('$kind, $shape: stays inside the silhouette', ({ kind, shape }) => {
    const body = bodyOf({ ...fig, shape }, { neck: kind === 'fig', cut: true });
    for (let along = 0; along <= 1; along += 0.05) {
      const [x, y] = body.on(along, 1);
      expect(x).toBeLessThanOrEqual(fig.widthMm / 2 + 1e-9);
      expect(y).toBeGreaterThanOrEqual(-1e-9);
      expect(y).toBeLessThanOrEqual(fig.lengthMm + 1e-9);
    }
    expect(body.radiusAt(-1)).toBe(0);
    expect(body.radiusAt(fig.lengthMm + 1)).toBe(0);
  });
});

describe('what is drawn', () => {
  it.each([
    ['Ficus carica', 'fig'],
    ['Punica granatum', 'pomegranate'],
    ['Diospyros kaki', 'persimmon'],
    ['Diospyros virginiana', 'seeded persimmon'],
    ['Morus alba and hybrids', 'cluster'],
    ['Ziziphus jujuba', 'jujube'],
    ['Cydonia oblonga', 'plain'],
  ] as const)('%s bears a %s', (botanical, kind) => {
    expect(fruitKind(botanical, { shape: 'round' })).toBe(kind);
  });

  it('draws a cluster of any species as one', () => {
    expect(fruitKind('Cydonia oblonga', { shape: 'cluster' })).toBe('cluster');
  });

  it('has a small symbol for every kind and shape, 600 bytes compressed at most', () => {
    for (const { kind, shape } of drawable) {
      const symbol = symbolOf(kind, shape);
      expect(symbol).not.toMatch(/NaN|undefined/);
      expect(gzipSync(symbol).length).toBeLessThanOrEqual(600);
    }
  });
});
