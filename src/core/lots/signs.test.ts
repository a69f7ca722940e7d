import { describe, expect, it } from 'vitest';
import { type Line, walkOn } from '../../../tests/world.ts';
import { day } from '../days.ts';
import { signsOf } from './signs.ts';
import { indexWalks } from './walkIndex.ts';

function signsAfter(walks: Record<string, Line>, asOf = '2027-12-31') {
  const made = Object.entries(walks).map(([on, line]) => walkOn(on, [line]));
  return signsOf(indexWalks(made, day(asOf)).get('a-1') ?? []);
}

describe('signs', () => {
  it('are unknown where nobody looked', () => {
    const signs = signsAfter({});
    expect(Object.values(signs).every(value => value === null)).toBe(true);
  });

  it('are the newest, field by field: a blank does not erase', () => {
    const signs = signsAfter({
      '2026-08-01': { roots: 'showing', heightCm: 40, leaves: 'full' },
      '2026-09-01': { roots: 'holding' },
      '2026-10-01': { leaves: 'turning' },
    });
    expect(signs.roots).toEqual({ value: 'holding', on: '2026-09-01' });
    expect(signs.heightCm).toEqual({ value: 40, on: '2026-08-01' });
    expect(signs.leaves).toEqual({ value: 'turning', on: '2026-10-01' });
    expect(signs.lastLooked).toBe('2026-10-01');
  });

  it('do not depend on the order in which the walks are given', () => {
    const later = walkOn('2026-09-01', [{ roots: 'full' }]);
    const first = walkOn('2026-08-01', [{ roots: 'none' }]);
    const asOf = day('2026-10-01');
    expect(signsOf(indexWalks([later, first], asOf).get('a-1')!)).toEqual(
      signsOf(indexWalks([first, later], asOf).get('a-1')!),
    );
  });

  it('leave out what was seen after the day', () => {
    expect(
      signsAfter({ '2026-08-01': { roots: 'none' }, '2026-09-01': { roots: 'full' } }, '2026-08-31').roots,
    ).toEqual({
      value: 'none',
      on: '2026-08-01',
    });
  });

  it('tell since when leaves are down: from the first sight of them falling', () => {
    const walks: Record<string, Line> = {
      '2025-11-20': { leaves: 'bare' },
      '2026-06-01': { leaves: 'full' },
      '2026-11-01': { leaves: 'falling' },
      '2026-11-10': { roots: 'full' },
      '2026-11-20': { leaves: 'bare' },
    };
    expect(signsAfter(walks).leavesDownSince).toBe('2026-11-01');
    expect(signsAfter(walks, '2026-10-01').leavesDownSince).toBeNull();
  });

  it('tell since when it stands outside, shade included', () => {
    const walks: Record<string, Line> = {
      '2026-04-01': { where: 'tunnel' },
      '2026-04-20': { where: 'shade' },
      '2026-05-05': { where: 'outdoors' },
    };
    expect(signsAfter(walks).outsideSince).toBe('2026-04-20');
    expect(signsAfter({ ...walks, '2026-10-30': { where: 'store' } })).toMatchObject({
      outsideSince: null,
      lastOutside: { from: '2026-04-20', to: '2026-05-05' },
    });
  });
});
