/** Rounding and wording of measures. Conversions are checked against published figures in tests/evidence. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  caliperInWords,
  celsiusToFahrenheit,
  cmToInches,
  degreesCToF,
  degreesFToC,
  fahrenheitToCelsius,
  inchesToCm,
  inchesToMm,
  kgToPounds,
  lengthInWords,
  mmToInches,
  poundsToKg,
  roundTo,
  temperatureInWords,
  weightInWords,
} from './units.ts';

const values = fc.double({ min: -1e4, max: 1e4, noNaN: true });

describe('conversions', () => {
  it.each([
    ['temperature', fahrenheitToCelsius, celsiusToFahrenheit],
    ['difference', degreesFToC, degreesCToF],
    ['in and mm', inchesToMm, mmToInches],
    ['in and cm', inchesToCm, cmToInches],
    ['lb and kg', poundsToKg, kgToPounds],
  ])('%s: there and back', (_what, there, back) => {
    fc.assert(
      fc.property(
        values,
        value => Math.abs(back(there(value)) - value) <= 1e-9 * Math.max(1, Math.abs(value)),
      ),
      { seed: 1 },
    );
  });

  it('does not shift a difference by 32', () => {
    expect(degreesFToC(18)).toBeCloseTo(10, 12);
    expect(fahrenheitToCelsius(18)).toBeCloseTo(-7.7778, 4);
  });
});

describe('rounding', () => {
  it('goes to the nearest step, half away from zero', () => {
    expect([roundTo(2.5, 1), roundTo(-2.5, 1), roundTo(1.25, 0.5), roundTo(1.005, 0.01)]).toEqual([
      3, -3, 1.5, 1.01,
    ]);
  });

  it('has no negative zero and no float dust', () => {
    expect(Object.is(roundTo(-0.2, 1), 0)).toBe(true);
    expect(roundTo(0.3, 0.1)).toBe(0.3);
  });

  it('never moves a value by more than half a step', () => {
    fc.assert(
      fc.property(values, fc.constantFrom(0.05, 0.1, 0.5, 1, 5, 10), (value, step) => {
        expect(Math.abs(roundTo(value, step) - value)).toBeLessThanOrEqual(step / 2 + 1e-6);
      }),
      { seed: 2 },
    );
  });
});

describe('words', () => {
  it('gives both units', () => {
    expect(temperatureInWords(-5)).toBe('23 F (-5 C)');
    expect(lengthInWords(76.2)).toBe('30 in (76 cm)');
    expect(caliperInWords(12.7)).toBe('0.5 in (13 mm)');
    expect(weightInWords(3)).toBe('7 lb (3 kg)');
  });
});
