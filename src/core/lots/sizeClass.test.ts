import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { worldRecords } from '../../../tests/world.ts';
import { day } from '../days.ts';
import { containerClasses } from '../records/container.ts';
import type { LotSigns } from './answers.ts';
import { gradeBands, sizeOf } from './sizeClass.ts';

const nothing: LotSigns = {
  heightCm: null,
  caliperMm: null,
  roots: null,
  leaves: null,
  wood: null,
  health: null,
  where: null,
  outsideSince: null,
  lastOutside: null,
  leavesDownSince: null,
  lastLooked: null,
};
const asOf = day('2026-11-01');
const base = 5;

function size(container: string | null, heightCm: number | null, caliperMm: number | null) {
  const pottings = container === null ? undefined : [{ date: '2026-07-11', container }];
  const lot = worldRecords({ lots: [pottings ? { pottings } : { pottings: [] }] }).lots[0]!;
  const measured = (value: number | null, on: string) => (value === null ? null : { value, on: day(on) });
  const signs = {
    ...nothing,
    heightCm: measured(heightCm, '2026-09-01'),
    caliperMm: measured(caliperMm, '2026-10-01'),
  };
  return sizeOf(lot, signs, asOf, base);
}

describe('size class', () => {
  it('has bands for every class, none below the one before', () => {
    expect(gradeBands).toHaveLength(containerClasses.length);
    for (const [index, band] of gradeBands.entries()) {
      const before = gradeBands[index - 1] ?? { heightCm: 0, caliperMm: 0 };
      expect(band.heightCm).toBeGreaterThanOrEqual(before.heightCm);
      expect(band.caliperMm).toBeGreaterThanOrEqual(before.caliperMm);
    }
  });

  it('is the class of the pot where the plant fills it', () => {
    const { answer, because } = size('#1', 60, 8);
    expect(answer).toEqual({
      name: '#1',
      classIndex: 5,
      againstPot: 0,
      container: '#1',
      heightCm: 60,
      caliperMm: 8,
      measuredOn: '2026-10-01',
    });
    expect(because.map(({ text }) => text)).toContain('Height and stem are true to its pot: graded #1.');
  });

  it('moves one step at most', () => {
    expect(size('#1', 300, 60).answer.name).toBe('#2');
    expect(size('#1', 10, 2).answer.name).toBe('SP5');
  });

  it('needs both measures to move up', () => {
    expect(size('#1', 300, 8).answer.name).toBe('#1');
  });

  it('is the class of the pot where nothing was measured', () => {
    expect(size('#3', null, null).answer).toMatchObject({ name: '#3', measuredOn: null });
  });

  it('goes by the measures alone for a tree that never stood in a pot, by the base size for an unmeasured one', () => {
    expect(size(null, 140, 18).answer).toMatchObject({ name: '#5', container: null });
    expect(size(null, null, null).answer.classIndex).toBe(base);
  });

  it('takes the newest pot up to the day', () => {
    const lot = worldRecords({
      lots: [
        {
          pottings: [
            { date: '2026-07-11', container: '#1' },
            { date: '2026-12-01', container: '#3' },
          ],
        },
      ],
    }).lots[0]!;
    expect(sizeOf(lot, nothing, asOf, base).answer.container).toBe('#1');
    expect(sizeOf(lot, nothing, day('2026-12-01'), base).answer.container).toBe('#3');
  });

  it('never grades a larger plant smaller', () => {
    const pot = fc.nat(containerClasses.length - 1);
    const height = fc.integer({ min: 3, max: 400 });
    const caliper = fc.integer({ min: 1, max: 80 });
    fc.assert(
      fc.property(pot, pot, height, height, caliper, caliper, (p1, p2, h1, h2, c1, c2) => {
        const graded = (p: number, h: number, c: number) =>
          size(containerClasses[p]!.name, h, c).answer.classIndex;
        const small = graded(Math.min(p1, p2), Math.min(h1, h2), Math.min(c1, c2));
        const large = graded(Math.max(p1, p2), Math.max(h1, h2), Math.max(c1, c2));
        expect(large).toBeGreaterThanOrEqual(small);
        expect(Math.abs(small - Math.min(p1, p2))).toBeLessThanOrEqual(1);
      }),
      { seed: 51, numRuns: 300 },
    );
  });
});
