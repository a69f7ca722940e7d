import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baseYard, worldRecords } from '../../../tests/world.ts';
import { addDays, day } from '../days.ts';
import { containerClasses } from '../records/container.ts';
import { costFloor, LEAST_SUCCESS, priceForMargin, UNKNOWN_SUCCESS } from './cost.ts';

const costs = worldRecords({
  yard: {
    costs: {
      ...baseYard.costs!,
      space_week: '0.50',
      sell_through: 0.8,
      margin: 0.5,
      fee_share: 0.2,
    },
  },
}).yard.costs!;

function lotIn(container: string, potted = '2026-07-11') {
  return worldRecords({ lots: [{ pottings: [{ date: potted, container }] }] }).lots[0]!;
}

describe('cost floor', () => {
  it('adds up start, pot and space, spread over those that live, then packing, unsold, margin and fees', () => {
    // 10 weeks in a #1: 3.00 + 1.20 + 0.50 x 0.3 x 10 = 5.70; 90 % live: 6.3333; packing 4: 10.3333;
    // 80 % sold: 12.9167; half is margin: 25.8333; a fifth goes in fees: 32.2917.
    expect(costFloor(lotIn('#1'), costs, 0.9, day('2026-09-19'))).toBeCloseTo(32.2917, 4);
  });

  it('counts every pot and the weeks in each', () => {
    const lot = worldRecords({
      lots: [
        {
          pottings: [
            { date: '2026-07-11', container: '#1' },
            { date: '2026-09-19', container: '#3' },
          ],
        },
      ],
    }).lots[0]!;
    // As above, and 3.40 + 0.50 x 0.8 x 2 = 4.20 more.
    const raising = 5.7 + 4.2;
    expect(costFloor(lot, costs, 0.9, day('2026-10-03'))).toBeCloseTo(
      (raising / 0.9 + 4) / 0.8 / 0.5 / 0.8,
      6,
    );
  });

  it('takes a working figure where no success is on record', () => {
    const lot = lotIn('#1');
    expect(costFloor(lot, costs, null, day('2026-09-19'))).toBe(
      costFloor(lot, costs, UNKNOWN_SUCCESS, day('2026-09-19')),
    );
  });

  it('stays a number where nothing lived', () => {
    const floor = (success: number) => costFloor(lotIn('#1'), costs, success, day('2026-09-19'));
    expect(floor(0)).toBe(floor(LEAST_SUCCESS));
    expect(Number.isFinite(floor(0))).toBe(true);
  });

  it('never falls with time or with the size of the pot, gaps in the rows or not', () => {
    const names = containerClasses.map(({ name }) => name);
    fc.assert(
      fc.property(fc.nat(13), fc.nat(13), fc.nat(300), fc.nat(300), (a, b, early, more) => {
        const floor = (index: number, days: number) =>
          costFloor(lotIn(names[index]!), costs, 0.9, addDays(day('2026-07-11'), days));
        expect(floor(Math.max(a, b), early + more)).toBeGreaterThanOrEqual(floor(Math.min(a, b), early));
      }),
      { seed: 41 },
    );
  });

  it('refuses a margin that leaves nothing', () => {
    expect(() => priceForMargin(10, 1)).toThrow(RangeError);
  });
});
