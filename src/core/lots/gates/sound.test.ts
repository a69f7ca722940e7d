import { describe, expect, it } from 'vitest';
import { gateOf, wordsOf } from '../../../../tests/askGate.ts';
import type { World } from '../../../../tests/world.ts';

describe('sound', () => {
  const health = (value: 'sound' | 'watch' | 'hold'): World => ({
    walks: { '2026-08-01': [{ health: value }] },
  });

  it('goes by the newest look at health', () => {
    expect(gateOf(health('sound'), '2026-08-02', 'sound').state).toBe('passed');
    expect(gateOf(health('watch'), '2026-08-02', 'sound').state).toBe('look');
    expect(gateOf(health('hold'), '2026-08-02', 'sound').state).toBe('blocked');
    expect(gateOf({}, '2026-08-02', 'sound').state).toBe('look');
  });

  it('wants a fresh look', () => {
    expect(gateOf(health('sound'), '2026-09-20', 'sound').state).toBe('look');
  });

  it('is blocked while the lot is held, with the reason, from its day on', () => {
    const world: World = {
      ...health('sound'),
      lots: [{ hold: { since: '2026-08-05', why: 'Waiting for a test.' } }],
    };
    expect(gateOf(world, '2026-08-04', 'sound').state).toBe('passed');
    const held = gateOf(world, '2026-08-05', 'sound');
    expect(held.state).toBe('blocked');
    expect(wordsOf(held)).toContain('Waiting for a test.');
  });
});
