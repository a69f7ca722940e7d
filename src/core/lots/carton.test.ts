import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baseYard, worldRecords } from '../../../tests/world.ts';
import { containerOf } from '../records/container.ts';
import { inchesToCm } from '../units.ts';
import { cartonFor, plantsInCarton, smallestFirst } from './carton.ts';
import { billingOf } from './parcel.ts';
import { packedPlant, potWidthCm } from './plantInTransit.ts';

const { yard } = worldRecords();
const cartons = smallestFirst(yard.cartons);
const sent = (
  form: 'leafed-pot' | 'dormant-pot' | 'bare-root',
  heightCm: number | null,
  container: string | null,
) => {
  const pot = container === null ? null : containerOf(container);
  return cartonFor(form, heightCm, pot, pot?.classIndex ?? 5, yard, cartons);
};

describe('carton', () => {
  it('is the smallest that takes the plant', () => {
    // A #1 pot holds 3.3 L and is 17 cm across and deep: 50 + 17 cm long, 6.6 in across.
    const { answer } = sent('dormant-pot', 50, '#1');
    expect(answer).toMatchObject({ carton: 'Long', plants: 1, cutBackToCm: null });
    // 0.2 kg and 5 classes of 0.04 kg of tree, 3.3 L of mix at 0.9 kg: 3.37 kg, and 1.5 lb of carton.
    expect(answer.weightLb).toBeCloseTo(3.372 / 0.45359237 + 1.5, 2);
    expect(answer.billable).toEqual([{ rule: 'Ground', billableLb: 24, over: [] }]);
  });

  it('takes a tree cut back to the sending height', () => {
    const { answer, because } = sent('bare-root', 180, '#1');
    expect(answer.cutBackToCm).toBeCloseTo(inchesToCm(30), 9);
    expect(because[0]).toMatchObject({ standing: 'practice' });
    expect(answer.carton).toBe('Long');
    expect(sent('bare-root', 76, '#1').answer.cutBackToCm).toBeNull();
  });

  it('tells how many lie side by side', () => {
    // Bare-root trees take 12 cm, 4.7 in: one in 8 in, three by three in 16 in.
    const plant = packedPlant('bare-root', 70, null, 5);
    expect(cartons.map(carton => plantsInCarton(carton, plant))).toEqual([1, 9]);
  });

  it('is none for a pot that is too large', () => {
    const { answer, because } = sent('dormant-pot', 60, '#15');
    expect(answer).toMatchObject({ carton: null, plants: 0, billable: [] });
    expect(because.at(-1)!.text).toContain('No carton');
  });

  it('allows for the full sending height where nothing was measured', () => {
    expect(sent('dormant-pot', null, '#1').because[0]!.text).toContain('Not measured yet');
  });

  it('gives a taller or more widely potted plant no smaller carton', () => {
    const volume = (name: string | null) => {
      const carton = cartons.find(candidate => candidate.name === name);
      return carton ? carton.outerIn.reduce((product, side) => product * side) : Number.POSITIVE_INFINITY;
    };
    const pots = ['SP4', 'SP5', '#1', '#2', '#3', '#5'];
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 200 }),
        fc.nat(100),
        fc.nat(5),
        fc.nat(5),
        (height, more, p, q) => {
          const small = sent('dormant-pot', height, pots[Math.min(p, q)]!).answer;
          const large = sent('dormant-pot', height + more, pots[Math.max(p, q)]!).answer;
          expect(volume(large.carton)).toBeGreaterThanOrEqual(volume(small.carton));
        },
      ),
      { seed: 71 },
    );
  });

  it('has pots of about the width they are known by', () => {
    // A pot sold as one gallon holds 2.8 to 3.3 L and is about 6.5 in across: common practice, no source.
    expect(potWidthCm(3)).toBeGreaterThan(inchesToCm(6));
    expect(potWidthCm(3)).toBeLessThan(inchesToCm(7));
  });
});

describe('billing', () => {
  const rule = yard.parcelRules[0]!;

  it('is the larger of weight and size', () => {
    expect(billingOf([12, 12, 12], 20.2, rule).billableLb).toBe(21);
    expect(billingOf([12, 12, 12], 5, rule)).toMatchObject({ dimensionalLb: 13, billableLb: 13 });
  });

  it('lists every limit that is broken, none that is just reached', () => {
    expect(billingOf([108, 10, 10], 150, rule).over).toEqual([]);
    expect(billingOf([109, 20, 20], 151, rule).over).toEqual([
      'longest side 109 in, at most 108 in',
      'length plus girth 189 in, at most 165 in',
      'weight 151 lb, at most 150 lb',
    ]);
  });

  it('knows no limit that the row does not give', () => {
    const silent = worldRecords({
      yard: { parcel_rules: [{ name: 'Any', divisor: 139, rounding: 'up', checked: '2026-01-05' }] },
    }).yard.parcelRules[0]!;
    expect(billingOf([200, 80, 80], 900, silent).over).toEqual([]);
    expect(baseYard.parcel_rules).toHaveLength(1);
  });
});
