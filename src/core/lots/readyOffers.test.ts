import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Form, forms } from '../records/formNames.ts';
import { type OfferedLot, readyForms, readyOffers } from './readyOffers.ts';

const states = ['ready', 'opens', 'look', 'blocked'] as const;
const price = (minor: number) => ({ answer: { price: { minor, currency: 'USD' } } });

const anyLot: fc.Arbitrary<OfferedLot> = fc.record({
  forms: fc
    .subarray([...forms])
    .chain(some =>
      fc
        .array(fc.constantFrom(...states), { minLength: some.length, maxLength: some.length })
        .map(found => some.map((form, at) => ({ form, state: found[at]! }))),
    ),
  tiers: fc.record(
    Object.fromEntries(
      forms.map(form => [form, fc.option(fc.integer({ min: 0, max: 40_000 }).map(price), { nil: null })]),
    ),
  ) as fc.Arbitrary<OfferedLot['tiers']>,
  stock: fc.record({ left: fc.integer({ min: 1, max: 60 }) }),
  soldOut: fc.boolean(),
});

/** The pairs of a form that is ready and its own price, gathered by hand. */
const readyPrices = (lots: readonly OfferedLot[], asked: readonly Form[]) =>
  lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(lot =>
      lot.forms
        .filter(({ form, state }) => state === 'ready' && asked.includes(form))
        .flatMap(({ form }) => lot.tiers[form]?.answer.price.minor ?? []),
    );

describe('what can be had today', () => {
  it('has the price of a form that is ready, and of no other', () =>
    fc.assert(
      fc.property(fc.array(anyLot, { maxLength: 6 }), fc.subarray([...forms]), (lots, asked) => {
        const prices = readyPrices(lots, asked);
        const { lowest, pricesDiffer } = readyOffers(lots, asked);
        expect(lowest?.minor ?? null).toBe(prices.length === 0 ? null : Math.min(...prices));
        expect(pricesDiffer).toBe(new Set(prices).size > 1);
      }),
      { seed: 17, numRuns: 500 },
    ));

  it('counts only trees of lots that are ready, each once', () =>
    fc.assert(
      fc.property(fc.array(anyLot, { maxLength: 6 }), lots => {
        const ready = lots.filter(lot => !lot.soldOut && lot.forms.some(({ state }) => state === 'ready'));
        const found = readyOffers(lots);
        expect(found.trees).toBe(ready.reduce((sum, { stock }) => sum + stock.left, 0));
        expect(found.lots).toBe(ready.length);
        expect(found.forms.length > 0).toBe(ready.length > 0);
      }),
      { seed: 17, numRuns: 500 },
    ));

  it('is the same whatever else stands on the list that is not ready', () =>
    fc.assert(
      fc.property(fc.array(anyLot, { maxLength: 4 }), anyLot, (lots, other) => {
        const waiting = {
          ...other,
          forms: other.forms.map(({ form }) => ({ form, state: 'opens' as const })),
        };
        expect(readyForms(waiting)).toEqual([]);
        expect(readyOffers([...lots, waiting])).toEqual(readyOffers(lots));
      }),
      { seed: 17, numRuns: 300 },
    ));

  it('tells a lot whose cheap form is still to come by the price of the form that is ready', () => {
    const lot: OfferedLot = {
      forms: [
        { form: 'leafed-pot', state: 'ready' },
        { form: 'bare-root', state: 'opens' },
      ],
      tiers: { 'leafed-pot': price(8000), 'bare-root': price(4000) },
      stock: { left: 11 },
      soldOut: false,
    };
    expect(readyOffers([lot])).toMatchObject({
      lots: 1,
      trees: 11,
      lowest: { minor: 8000 },
      pricesDiffer: false,
    });
  });
});
