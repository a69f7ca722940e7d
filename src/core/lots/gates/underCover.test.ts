/** A tree in leaf that was hardened outdoors and then taken under a roof keeps its leaves and its hardness for a while. */

import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../../days.ts';
import type { WalkRow, Where } from '../../records/walk.ts';
import { signsOf } from '../signs.ts';
import type { Subject, YardDay } from '../subject.ts';
import { HARDENING_DAYS, HARDNESS_KEEPS_DAYS, leafed } from './leafed.ts';

const blank: WalkRow = {
  lot: 'one',
  left: null,
  lost: null,
  returned: null,
  heightCm: null,
  caliperMm: null,
  roots: null,
  leaves: 'full',
  wood: null,
  health: null,
  where: null,
  line: 2,
};

/** The gate on `asOf` for a tree seen in full leaf at these places on these days; no weather is asked for. */
function gateOf(places: readonly (readonly [day: string, where: Where])[], asOf: string) {
  const signs = signsOf(places.map(([on, where]) => ({ on: on as Day, row: { ...blank, where } })));
  const outlook = {
    when: () => {
      throw new Error('outdoor weather says nothing about a tree under cover');
    },
  };
  const today = { asOf, yard: { walkFreshDays: 28 }, outlook } as unknown as YardDay;
  return leafed({ signs } as Subject, today);
}

describe('in leaf under cover', () => {
  it('passes when it stood outdoors long enough before', () => {
    const gate = gateOf(
      [
        ['2026-09-19', 'outdoors'],
        ['2026-10-10', 'shade'],
        ['2026-11-21', 'tunnel'],
      ],
      '2026-11-25',
    );
    expect(gate.state).toBe('passed');
    expect(gate.because.map(({ text }) => text)).toEqual([
      'In full leaf on the walk of November 21, 2026.',
      'Stands in the tunnel, as seen on the walk of November 21, 2026; outdoors before that from September 19 to October 10, 2026.',
    ]);
  });

  it('is blocked when it never stood outdoors, or too short', () => {
    expect(gateOf([['2026-11-21', 'tunnel']], '2026-11-25').state).toBe('blocked');
    const day = '2026-10-01' as Day;
    const stay = (days: number) =>
      gateOf(
        [
          [day, 'outdoors'],
          [addDays(day, days), 'outdoors'],
          ['2026-11-21', 'tunnel'],
        ],
        '2026-11-25',
      ).state;
    expect(stay(HARDENING_DAYS - 1)).toBe('blocked');
    expect(stay(HARDENING_DAYS)).toBe('passed');
  });

  it('is blocked once the hardness is lost', () => {
    const last = '2026-09-20' as Day;
    const stateAfter = (days: number) => {
      const asOf = addDays(last, days);
      return gateOf(
        [
          ['2026-09-01', 'outdoors'],
          [last, 'outdoors'],
          [addDays(asOf, -3), 'store'],
        ],
        asOf,
      ).state;
    };
    expect(stateAfter(HARDNESS_KEEPS_DAYS)).toBe('passed');
    expect(stateAfter(HARDNESS_KEEPS_DAYS + 1)).toBe('blocked');
  });

  it('asks for a look when the leaves were seen long ago', () => {
    const gate = gateOf(
      [
        ['2026-09-01', 'outdoors'],
        ['2026-09-20', 'outdoors'],
        ['2026-10-24', 'tunnel'],
      ],
      '2026-11-25',
    );
    expect(gate.state).toBe('look');
  });
});
