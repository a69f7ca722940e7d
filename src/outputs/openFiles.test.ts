/** The open files against the JSON Schemas published beside them, by an independent validator (ajv). */

import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { baseYard, catalogueOf, type World, worldRecords } from '../../tests/world.ts';
import { cultivarsFile, cultivarsFileSchema } from './cultivarsFile.ts';
import { stockFile, stockFileSchema } from './stockFile.ts';

const addressOf = (path: string) => `https://bench.example${path}`;

const world: World = {
  cultivars: { 'test-fig': { synonyms: ['Old Test'], requests: 73_519 }, idle: { name: 'Idle' } },
  lots: [
    {},
    { lot: 'b-2', forms: ['dormant-pot'] },
    {
      lot: 'c-3',
      pottings: [{ date: '2026-07-11', container: '3 L' }],
      price: { amount: '55.50', why: 'Crooked.' },
    },
  ],
  walks: {
    '2026-11-01': [
      {
        left: 7,
        roots: 'full',
        leaves: 'bare',
        wood: 'brown',
        health: 'sound',
        heightCm: 60.96,
        caliperMm: 9.525,
      },
      { lot: 'b-2', left: 0 },
    ],
  },
};
const catalogue = catalogueOf(worldRecords(world), '2026-12-10');
const stock = stockFile(catalogue, addressOf, []);
const cultivars = cultivarsFile(catalogue, addressOf);

function validator(schema: Record<string, unknown>) {
  const ajv = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true });
  addFormats.default(ajv);
  return ajv.compile(schema);
}

describe.each([
  ['stock.json', stockFileSchema(), stock],
  ['cultivars.json', cultivarsFileSchema(), cultivars],
] as const)('%s', (_name, schema, file) => {
  it('is what its published schema says', () => {
    const validate = validator(schema);
    const asPublished: unknown = JSON.parse(JSON.stringify(file));
    validate(asPublished);
    expect(validate.errors ?? []).toEqual([]);
  });

  it('has a schema that refuses something else', () => {
    const validate = validator(schema);
    expect(validate({ ...file, extra: 1 })).toBe(false);
    expect(validate({ ...file, version: 2 })).toBe(false);
    expect(validate({ ...file, asOf: 'December 10' })).toBe(false);
  });

  it('holds no private figure', () => {
    const text = JSON.stringify(file);
    for (const secret of ['73519', 'requests', 'costs', 'margin', baseYard.costs!.packing]) {
      expect(text).not.toContain(secret);
    }
  });
});

describe('stock.json', () => {
  const [first, soldOut, own] = stock.lots;

  it('tells what a lot is, and where its page is', () => {
    expect(first).toMatchObject({
      lot: 'a-1',
      cultivar: 'test-fig',
      species: 'fig',
      left: 7,
      size: { class: '#1', container: '#1', heightCm: 61, caliperMm: 9.5, measuredOn: '2026-11-01' },
      scarcity: { class: 2 },
      url: 'https://bench.example/lots/a-1/',
    });
  });

  it('gives each form its state, days, price and reasons', () => {
    expect(first!.forms.map(({ form }) => form)).toEqual(['leafed-pot', 'dormant-pot', 'bare-root']);
    for (const { state, from, to, price, because } of first!.forms) {
      expect(from !== null && to !== null).toBe(state === 'opens');
      expect(price).toMatchObject({ currency: 'USD' });
      expect(because.length).toBeGreaterThan(0);
    }
  });

  it('shows tier and price of the leading form', () => {
    const leading = first!.forms.find(({ state }) => state === 'ready')!;
    expect(leading.form).toBe('dormant-pot');
    expect(first!.price).toEqual(leading.price);
    expect(own!.price).toEqual({ amount: 5550, currency: 'USD' });
  });

  it('keeps a sold-out lot, without a price', () => {
    expect(soldOut).toMatchObject({ lot: 'b-2', left: 0, tier: null, price: null });
    expect(soldOut!.forms.map(({ price }) => price)).toEqual([null]);
    expect(soldOut!.forms[0]!.state).toBe('blocked');
  });
});

describe('cultivars.json', () => {
  it('has every cultivar with its traits and lots, also one without lots', () => {
    expect(cultivars.cultivars.map(({ id, lots }) => [id, lots])).toEqual([
      ['idle', []],
      ['test-fig', ['a-1', 'b-2', 'c-3']],
    ]);
    expect(cultivars.cultivars[1]).toMatchObject({
      name: 'Test Fig',
      synonyms: ['Old Test'],
      flavor: { id: 'honey', name: 'Honey' },
      fruit: { lengthMm: 50, blush: null },
      url: 'https://bench.example/cultivars/test-fig/',
    });
  });
});
