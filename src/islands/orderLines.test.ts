import { describe, expect, it } from 'vitest';
import { day } from '../core/days.ts';
import {
  deliveryOf,
  type KnownLine,
  knownLine,
  type OrderPlace,
  orderText,
  parseLines,
  weekLines,
} from './orderLines.ts';

describe('kept lines', () => {
  it('are read back as they were kept', () => {
    const lines = [{ lot: '26-layer-01', form: 'bare-root', count: 2 }];
    expect(parseLines(JSON.stringify(lines))).toEqual(lines);
  });

  it.each([
    null,
    '',
    '{',
    '{}',
    'null',
    '[null]',
    '[{"lot":1}]',
    '[{"lot":"a","form":"b","count":0}]',
    '[{"lot":"a","form":"b","count":1.5}]',
  ])('are none for %s', text => expect(parseLines(text)).toEqual([]));
});

const rule = {
  name: 'Ground',
  divisor: 139,
  rounding: 'up',
  overCubicIn: 0,
  longestIn: null,
  lengthAndGirthIn: null,
  heaviestLb: null,
  checked: day('2026-10-05'),
} as const;
const slim = { name: 'Slim', outerIn: [30, 6, 6] as [number, number, number], tareLb: 1 };
const delivery = {
  billedBy: 'Ground',
  checked: day('2026-10-05'),
  areas: [
    {
      name: 'New England',
      regions: ['Massachusetts'],
      prices: [
        { upToLb: 8, minor: 1700 },
        { upToLb: 20, minor: 2500 },
      ],
    },
    { name: 'Everywhere else', regions: null, prices: [{ upToLb: 8, minor: 2100 }] },
  ],
};
const file = { currency: 'USD', cartons: [slim], rules: [rule], delivery };
const form: KnownLine['form'] = {
  form: 'bare-root',
  name: 'Bare-root',
  price: 3200,
  ready: true,
  words: 'Ready, sent by forecast',
  carton: '',
  packed: { carton: 'Slim', perCarton: 4, treeLb: 1.5 },
};
const lot = { lot: '26-layer-01', cultivar: 'Pocket Lantern', address: 'https://yard.example/go/abcd/' };
const boston: OrderPlace = {
  name: 'Boston',
  region: 'Massachusetts',
  country: 'US',
  sent: true,
  weeks: [
    {
      form: 'bare-root',
      formName: 'Bare-root',
      runs: [{ days: 'November 23 to December 20', state: 'open', words: 'open' }],
    },
    { form: 'leafed-pot', formName: 'Leafed', runs: [] },
  ],
};

describe('a kept line', () => {
  const lots = [{ ...lot, left: 3, forms: [form] }];

  it('is of no more trees than are left by now', () => {
    expect(knownLine({ lots }, { lot: lot.lot, form: form.form, count: 2 })).toMatchObject({
      lot,
      form,
      count: 2,
    });
    expect(knownLine({ lots }, { lot: lot.lot, form: form.form, count: 1e9 })?.count).toBe(3);
  });

  it.each([
    ['its lot', { lot: '99-none-01' }],
    ['its form', { form: 'cutting' }],
  ])('is not known without %s', (_, change) => {
    expect(knownLine({ lots }, { lot: lot.lot, form: form.form, count: 1, ...change })).toBeNull();
  });

  it('is not known once the rest of its lot is reserved', () => {
    const none = [{ ...lots[0]!, left: 0 }];
    expect(knownLine({ lots: none }, { lot: lot.lot, form: form.form, count: 1 })).toBeNull();
  });
});

describe('delivery', () => {
  // 30 by 6 by 6 in are 1,080 cubic in, by the divisor of 139 7.8 and so 8 lb; four trees and the carton weigh 7.
  it('is the sum of parcels at the price of the area and the billed weight', () => {
    const told = deliveryOf(file, [{ lot, form, count: 5 }], boston);
    expect(told.parcels).toEqual([
      'Slim with 4 trees, billed as 8 lb (3.6 kg)',
      'Slim with 1 tree, billed as 8 lb (3.6 kg)',
    ]);
    expect(told.minor).toBe(3400);
    expect(told.words).toBe(
      'Delivery to Boston: $34 for 2 parcels (New England, our prices of October 5, 2026).',
    );
  });

  it('goes by the larger of weight and size', () => {
    const heavy = { ...form, packed: { carton: 'Slim', perCarton: 4, treeLb: 4 } };
    expect(deliveryOf(file, [{ lot, form: heavy, count: 4 }], boston).minor).toBe(2500);
  });

  it('of a place that no area names is that of everywhere else', () => {
    expect(deliveryOf(file, [{ lot, form, count: 1 }], { ...boston, region: 'Ohio' }).minor).toBe(2100);
    const named = { ...delivery, areas: delivery.areas.slice(0, 1) };
    const told = deliveryOf({ ...file, delivery: named }, [{ lot, form, count: 1 }], {
      ...boston,
      region: 'Ohio',
    });
    expect(told).toMatchObject({ minor: null, words: expect.stringContaining('no price for delivery') });
  });

  it.each([
    ['no place is chosen', {}, null, 'Choose your place'],
    ['the yard does not send there', {}, { ...boston, sent: false }, 'We do not send to Boston'],
    [
      'a parcel is heavier than the prices go',
      { packed: { ...form.packed!, treeLb: 30 } },
      boston,
      'Heavier',
    ],
    ['a tree fits no carton', { packed: { carton: null, perCarton: 0, treeLb: 9 } }, boston, 'Ask us'],
    ['nothing is known of how a tree is packed', { packed: null }, boston, 'Ask us'],
  ] as const)('is not known where %s', (_, change, place, words) => {
    const told = deliveryOf(file, [{ lot, form: { ...form, ...change }, count: 1 }], place);
    expect(told.minor).toBeNull();
    expect(told.words).toContain(words);
  });

  it('is not that of some of the trees, where nothing is known of how the others are packed', () => {
    const unknown = { ...form, packed: null };
    const told = deliveryOf(
      file,
      [
        { lot, form, count: 1 },
        { lot, form: unknown, count: 1 },
      ],
      boston,
    );
    expect(told).toMatchObject({ minor: null, words: 'Ask us what delivery costs.' });
  });

  it('is left out where the yard gives no prices, and the weights stay', () => {
    const told = deliveryOf({ ...file, delivery: null }, [{ lot, form, count: 1 }], boston);
    expect(told).toEqual({ parcels: ['Slim with 1 tree, billed as 8 lb (3.6 kg)'], words: '', minor: null });
  });
});

it('weeks are those of the forms on the list', () => {
  expect(weekLines([{ lot, form, count: 1 }], boston)).toEqual([
    'Bare-root: November 23 to December 20 (open)',
  ]);
  expect(weekLines([{ lot, form, count: 1 }], { ...boston, sent: false })).toEqual([]);
});

describe('what is written', () => {
  it('has lot, form, price, short address, total, parcels, delivery, weeks and place', () => {
    const text = orderText(
      file,
      [
        { lot, form, count: 3 },
        { lot, form: { ...form, price: null }, count: 1 },
      ],
      boston,
    );
    for (const part of [
      '3 x Pocket Lantern, lot 26-layer-01, bare-root, $32 each\n  Ready, sent by forecast\n  https://yard.example/go/abcd/',
      'price on request',
      'Together: $96 and $17 for delivery, $113 together, and what is priced on request.',
      'Slim with 4 trees, billed as 8 lb (3.6 kg)',
      'Delivery to Boston: $17 for 1 parcel',
      'They will live at Boston.',
      'Bare-root: November 23 to December 20 (open)',
    ])
      expect(text).toContain(part);
  });

  it('asks for the place where none is chosen, and names one whose file is not there yet', () => {
    expect(orderText(file, [], null)).toContain('town and ZIP code');
    expect(orderText(file, [], null, 'Boston')).toContain('They will live at Boston.');
  });
});
