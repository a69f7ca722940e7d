import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaOf, type OrderedTrees, parcelsOf } from './orderParcels.ts';

const cartons = [
  { name: 'Slim', tareLb: 1 },
  { name: 'Stout', tareLb: 3 },
];
const bare: OrderedTrees = { form: 'bare-root', count: 3, carton: 'Slim', perCarton: 4, treeLb: 1.5 };

describe('parcels of an order', () => {
  it('hold trees of several lots where form, carton and number agree', () => {
    const { parcels } = parcelsOf([bare, { ...bare, count: 2, treeLb: 2 }], cartons);
    expect(parcels).toEqual([
      { carton: 'Slim', trees: 4, weightLb: 1 + 2 + 2 + 1.5 + 1.5 },
      { carton: 'Slim', trees: 1, weightLb: 2.5 },
    ]);
  });

  it('never mix forms, and leave out what fits no carton', () => {
    const pot = { form: 'dormant-pot', count: 1, carton: 'Stout', perCarton: 1, treeLb: 9 };
    const { parcels, unpacked } = parcelsOf(
      [bare, pot, { ...pot, carton: null, perCarton: 0, count: 2 }],
      cartons,
    );
    expect(parcels.map(({ carton, trees }) => [carton, trees])).toEqual([
      ['Slim', 3],
      ['Stout', 1],
    ]);
    expect(unpacked).toBe(2);
  });

  it('hold every tree and its weight once, and none holds more than fits', () => {
    const line = fc.record({
      form: fc.constantFrom('bare-root', 'leafed-pot'),
      count: fc.integer({ min: 1, max: 12 }),
      carton: fc.constantFrom('Slim', 'Stout', null),
      perCarton: fc.integer({ min: 1, max: 6 }),
      treeLb: fc.integer({ min: 1, max: 20 }),
    });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), ordered => {
        const { parcels, unpacked } = parcelsOf(ordered, cartons);
        const trees = (lines: readonly OrderedTrees[]) => lines.reduce((sum, { count }) => sum + count, 0);
        const packed = ordered.filter(({ carton }) => carton !== null);
        expect(parcels.reduce((sum, parcel) => sum + parcel.trees, 0)).toBe(trees(packed));
        expect(unpacked).toBe(trees(ordered) - trees(packed));
        const tare = parcels.reduce(
          (sum, { carton }) => sum + cartons.find(({ name }) => name === carton)!.tareLb,
          0,
        );
        const treesLb = packed.reduce((sum, { count, treeLb }) => sum + count * treeLb, 0);
        expect(parcels.reduce((sum, { weightLb }) => sum + weightLb, 0)).toBeCloseTo(tare + treesLb, 6);
        const most = Math.max(0, ...packed.map(({ perCarton }) => perCarton));
        expect(parcels.every(({ trees: inside }) => inside >= 1 && inside <= most)).toBe(true);
      }),
    );
  });
});

it('an area that names the region goes before the one for everywhere else', () => {
  const delivery = {
    billedBy: '',
    checked: '2026-10-05' as never,
    areas: [
      { name: 'South', regions: ['Georgia', 'CA'], prices: [] },
      { name: 'Elsewhere', regions: null, prices: [] },
    ],
  };
  const named = (region: string, country: string) => areaOf(delivery, { region, country })?.name;
  expect([named('Georgia', 'US'), named('Ohio', 'US'), named('Ontario', 'CA')]).toEqual([
    'South',
    'Elsewhere',
    'South',
  ]);
});
