import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundings } from '../../../tests/arbitraries.ts';
import { day } from '../days.ts';
import { containerClasses } from '../records/container.ts';
import type { PriceSettings } from '../records/yard.ts';
import type { ScarcityClass } from './answers.ts';
import { type TierQuestion, tierOf } from './tier.ts';

const prices: PriceSettings = {
  series: 'R10',
  base: { fig: 40 },
  baseClassIndex: 5,
  stepsPerSize: 2,
  stepsPerScarcity: 1,
  formSteps: { 'leafed-pot': 0, 'dormant-pot': 0, 'bare-root': -1 },
  rounding: [
    { below: 40, to: 1 },
    { below: null, to: 5 },
  ],
};
const question: TierQuestion = {
  prices,
  currency: 'USD',
  base: 40,
  speciesName: 'fig',
  form: 'dormant-pot',
  classIndex: 5,
  scarcity: 0,
  floor: null,
  own: null,
};
const ask = (differs: Partial<TierQuestion>) => tierOf({ ...question, ...differs });
const textsOf = (differs: Partial<TierQuestion>) => ask(differs).because.map(({ text }) => text);

describe('price tier', () => {
  it('is the base price for the base size of a common cultivar', () => {
    expect(ask({}).answer).toEqual({ rung: 0, price: { minor: 4000, currency: 'USD' }, overrideRungs: null });
  });

  it('climbs by size, scarcity and form', () => {
    // Two classes up are 4 rungs, scarcity 3 is 3 rungs, bare-root one down: 6 rungs above 40 are 160.
    expect(ask({ classIndex: 7, scarcity: 3, form: 'bare-root' }).answer).toMatchObject({
      rung: 6,
      price: { minor: 16_000 },
    });
    expect(textsOf({ classIndex: 7, scarcity: 3, form: 'bare-root' })).toEqual([
      'Base price, fig in #1: $40.',
      'Size #3: 4 rungs up.',
      'Scarcity 3 of 4: 3 rungs up.',
      'Bare-root: 1 rung down.',
      'On the ladder $160, rounded to $160.',
    ]);
  });

  it('takes the base price to the nearest rung', () => {
    expect(ask({ base: 42 }).answer.price.minor).toBe(4000);
  });

  it('climbs to the rung that covers the cost, and says so without the cost', () => {
    const { answer, because } = ask({ floor: 57.31 });
    expect(answer).toMatchObject({ rung: 2, price: { minor: 6500 } });
    const words = because.map(({ text }) => text).join(' ');
    expect(words).toContain('The yard sells no such tree for less.');
    expect(words).not.toContain('57');
  });

  it('takes a price of its own, with its reason and its distance', () => {
    const { answer, because } = ask({
      own: { minor: 9900, why: 'First trees of it anywhere.', until: null },
    });
    expect(answer).toEqual({ rung: 4, price: { minor: 9900, currency: 'USD' }, overrideRungs: 4 });
    expect(because.at(-1)!.text).toBe(
      'This lot has a price of its own, 4 rungs up from that: First trees of it anywhere.',
    );
  });

  it('says until when a sale price holds', () => {
    const { because } = ask({ own: { minor: 2500, why: 'Bench sale.', until: day('2026-12-01') } });
    expect(because.at(-1)!.text).toBe(
      'This lot has a price of its own, 2 rungs down from that, until December 1, 2026: Bench sale.',
    );
  });

  it('lifts a price of its own to the next rung above the floor, which does not tell the floor', () => {
    const { answer, because } = ask({ floor: 30.005, own: { minor: 2000, why: 'Crooked.', until: null } });
    expect(answer.price.minor).toBe(3200);
    expect(because.at(-1)!.text).toContain('sells no such tree for less');
  });
});

describe('price tier, whatever the settings', () => {
  const steps = fc.nat(6);
  const settings: fc.Arbitrary<PriceSettings> = fc.record({
    series: fc.constantFrom('R5' as const, 'R10' as const, 'R20' as const),
    base: fc.constant({}),
    baseClassIndex: fc.nat(13),
    stepsPerSize: steps,
    stepsPerScarcity: steps,
    formSteps: fc.record({
      'leafed-pot': steps,
      'dormant-pot': steps,
      'bare-root': fc.integer({ min: -10, max: 6 }),
    }),
    rounding: roundings,
  });
  const classIndex = fc.nat(containerClasses.length - 1);
  const scarcity = fc.nat(4) as fc.Arbitrary<ScarcityClass>;
  const questions = fc.record({
    prices: settings,
    currency: fc.constantFrom('USD', 'JPY', 'KWD'),
    base: fc.double({ min: 1, max: 500, noNaN: true }),
    speciesName: fc.constant('fig'),
    form: fc.constantFrom('leafed-pot' as const, 'dormant-pot' as const, 'bare-root' as const),
    classIndex,
    scarcity,
    floor: fc.option(fc.double({ min: 0, max: 400, noNaN: true }), { nil: null }),
    own: fc.constant(null),
  });

  it('is never cheaper for a larger or scarcer plant', () => {
    fc.assert(
      fc.property(questions, classIndex, scarcity, (asked, otherClass, otherScarcity) => {
        const small = tierOf({
          ...asked,
          classIndex: Math.min(asked.classIndex, otherClass),
          scarcity: Math.min(asked.scarcity, otherScarcity) as ScarcityClass,
        });
        const large = tierOf({
          ...asked,
          classIndex: Math.max(asked.classIndex, otherClass),
          scarcity: Math.max(asked.scarcity, otherScarcity) as ScarcityClass,
        });
        expect(large.answer.price.minor).toBeGreaterThanOrEqual(small.answer.price.minor);
      }),
      { seed: 31, numRuns: 1000 },
    );
  });

  it('never lies below the floor', () => {
    fc.assert(
      fc.property(questions, fc.option(fc.nat(50_000), { nil: null }), (asked, own) => {
        const { price } = tierOf({
          ...asked,
          own: own === null ? null : { minor: own, why: 'Why not.', until: null },
        }).answer;
        const decimals = { USD: 2, JPY: 0, KWD: 3 }[asked.currency]!;
        expect(price.minor / 10 ** decimals).toBeGreaterThanOrEqual((asked.floor ?? 0) - 1e-6);
      }),
      { seed: 32, numRuns: 1000 },
    );
  });
});
