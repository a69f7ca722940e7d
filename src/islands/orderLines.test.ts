import { describe, expect, it } from 'vitest';
import { orderText, parseLines } from './orderLines.ts';

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

it('what is written has lot, form, price, short address, total and place', () => {
  const form = {
    form: 'bare-root',
    name: 'Bare-root',
    price: 3200,
    ready: true,
    words: 'Ready, sent by forecast',
    carton: '',
  } as const;
  const lot = { lot: '26-layer-01', cultivar: 'Pocket Lantern', address: 'https://yard.example/go/abcd/' };
  const text = orderText(
    { currency: 'USD' },
    [
      { lot, form, count: 3 },
      { lot, form: { ...form, price: null }, count: 1 },
    ],
    'Boston',
  );
  expect(text).toContain(
    '3 x Pocket Lantern, lot 26-layer-01, bare-root, $32 each\n  Ready, sent by forecast\n  https://yard.example/go/abcd/',
  );
  expect(text).toContain('price on request');
  expect(text).toContain('Together $96 without delivery.');
  expect(text).toContain('They will live at Boston.');
  expect(orderText({ currency: 'USD' }, [], null)).toContain('town and ZIP code');
});
