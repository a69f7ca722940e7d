import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cosTurn, sinTurn } from './circle.ts';
import { dailyCurve, linearCurve, monthlyMeans } from './dailyCurve.ts';

const months = fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: 12, maxLength: 12 });

describe('circle functions', () => {
  it('agree with those of the language to the last digits', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), turns => {
        expect(cosTurn(turns)).toBeCloseTo(Math.cos(2 * Math.PI * turns), 12);
        expect(sinTurn(turns)).toBeCloseTo(Math.sin(2 * Math.PI * turns), 12);
      }),
    );
  });
});

describe('dailyCurve', () => {
  it('keeps monthly means to 0.01 C for seasons as smooth as real ones', () => {
    const seasons = fc.tuple(
      fc.double({ min: -15, max: 30, noNaN: true }),
      fc.double({ min: 0, max: 30, noNaN: true }),
      fc.double({ min: 0, max: 12, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
    );
    fc.assert(
      fc.property(seasons, ([mean, swing, coldest, second]) => {
        const wanted = Array.from({ length: 12 }, (_, month) => {
          const angle = (2 * Math.PI * (month - coldest)) / 12;
          return mean - swing * Math.cos(angle) + second * Math.cos(2 * angle);
        });
        monthlyMeans(dailyCurve(wanted)).forEach((got, month) => {
          expect(Math.abs(got - (wanted[month] as number))).toBeLessThan(0.01);
        });
      }),
    );
  });

  it('is linear in the months and flat for a place without seasons', () => {
    fc.assert(
      fc.property(months, fc.double({ min: -5, max: 5, noNaN: true }), (values, shift) => {
        const [base, moved] = [dailyCurve(values), dailyCurve(values.map(value => value + shift))];
        base.forEach((value, day) => {
          expect(moved[day]).toBeCloseTo(value + shift, 9);
        });
      }),
    );
    expect(
      Math.max(...dailyCurve(new Array<number>(12).fill(7)).map(value => Math.abs(value - 7))),
    ).toBeLessThan(1e-12);
  });

  it('refuses eleven months and a month that is no number', () => {
    expect(() => dailyCurve(new Array<number>(11).fill(1))).toThrow(/twelve/);
    expect(() => linearCurve([...new Array<number>(11).fill(1), Number.NaN])).toThrow(RangeError);
  });
});

describe('linearCurve', () => {
  it('stays between the months and joins the end of the year to its start', () => {
    fc.assert(
      fc.property(months, values => {
        const curve = linearCurve(values);
        expect(Math.min(...curve)).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(Math.max(...curve)).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        const step = Math.abs((values[11] as number) - (values[0] as number)) / 30;
        expect(Math.abs((curve[364] as number) - (curve[0] as number))).toBeLessThanOrEqual(step + 1e-9);
      }),
    );
  });
});
