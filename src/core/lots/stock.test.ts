import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Line, walkOn, worldRecords } from '../../../tests/world.ts';
import { day } from '../days.ts';
import type { Lot } from '../records/lot.ts';
import { stockOf } from './stock.ts';
import { indexWalks } from './walkIndex.ts';

function stockAfter(raised: number, walks: Record<string, Line>, asOf = '2027-01-01') {
  const { lots } = worldRecords({ lots: [{ raised }] });
  const index = indexWalks(
    Object.entries(walks).map(([on, line]) => walkOn(on, [line])),
    day(asOf),
  );
  return stockOf(lots[0]!, index.get('a-1') ?? [], day(asOf));
}

describe('stock', () => {
  it('is what was raised until somebody counts', () => {
    expect(stockAfter(20, {})).toMatchObject({ raised: 20, left: 20, sold: 0, lost: 0, countedOn: null });
  });

  it('takes what is neither left nor lost as sold', () => {
    const stock = stockAfter(20, { '2026-08-01': { left: 17, lost: 3 }, '2026-09-05': { left: 12 } });
    expect(stock).toMatchObject({ left: 12, lost: 3, sold: 5, countedOn: '2026-09-05' });
  });

  it('takes losses and returns noted after the newest count into account', () => {
    const stock = stockAfter(20, { '2026-08-01': { left: 15 }, '2026-09-05': { lost: 2, returned: 1 } });
    expect(stock).toMatchObject({ left: 14, lost: 2, returned: 1, sold: 5, countedOn: '2026-08-01' });
    expect(stock.because.map(({ text }) => text)).toEqual([
      '15 plants counted on August 1, 2026.',
      '2 plants lost by September 5, 2026.',
      '1 plant came back by September 5, 2026.',
    ]);
  });

  it('lets a later count correct an earlier one', () => {
    expect(stockAfter(20, { '2026-08-01': { left: 10 }, '2026-08-20': { left: 12 } }).left).toBe(12);
  });

  it('does not know of walks after the day', () => {
    expect(stockAfter(20, { '2026-08-01': { left: 15 }, '2026-09-05': { left: 3 } }, '2026-09-04').left).toBe(
      15,
    );
  });

  it('says so when a count is higher than what can be there', () => {
    const stock = stockAfter(10, { '2026-08-01': { left: 14 } });
    expect(stock).toMatchObject({ left: 10, sold: 0 });
    expect(stock.because.at(-1)!.text).toContain('wants checking');
  });

  it('always balances, whatever the walks say', () => {
    const number = fc.option(fc.nat(40), { nil: null });
    const line = fc.record({ left: number, lost: number, returned: number });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.array(line, { maxLength: 8 }), (raised, lines) => {
        const walks = Object.fromEntries(lines.map((entry, index) => [`2026-08-${10 + index}`, entry]));
        const { left, sold, lost, returned } = stockAfter(raised, walks);
        expect(raised + returned).toBe(left + sold + lost);
        for (const amount of [left, sold, lost, returned]) expect(amount).toBeGreaterThanOrEqual(0);
      }),
      { seed: 11 },
    );
  });
});

describe('plants set aside', () => {
  const stockOn = (reserved: Lot['reserved'], on: string) => {
    const { lots } = worldRecords({ lots: [{ raised: 10 }] });
    return stockOf({ ...lots[0]!, reserved }, [], day(on));
  };
  const aside = [
    { plants: 3, since: day('2026-11-20'), until: day('2026-12-05') },
    { plants: 2, since: day('2026-11-25'), until: null },
  ];

  it.each([
    ['2026-11-19', 0],
    ['2026-11-20', 3],
    ['2026-11-25', 5],
    ['2026-12-05', 5],
    ['2026-12-06', 2],
  ])('on %s are %d', (on, reserved) => {
    expect(stockOn(aside, on)).toMatchObject({ left: 10, reserved, free: 10 - reserved });
  });

  it('are never more than are left, and are told with their last day', () => {
    const stock = stockOn([{ plants: 30, since: day('2026-11-20'), until: day('2026-12-05') }], '2026-11-25');
    expect(stock).toMatchObject({ left: 10, reserved: 10, free: 0 });
    expect(stock.because.at(-1)?.text).toBe(
      '30 plants set aside for a buyer on November 20, 2026, until December 5, 2026.',
    );
  });
});
