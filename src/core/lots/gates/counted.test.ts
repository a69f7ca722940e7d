import { describe, expect, it } from 'vitest';
import { gateOf, wordsOf } from '../../../../tests/askGate.ts';
import type { World } from '../../../../tests/world.ts';

describe('counted', () => {
  it('passes on a fresh count', () => {
    const world: World = { walks: { '2026-09-01': [{ left: 12 }] } };
    expect(gateOf(world, '2026-10-01', 'counted')).toMatchObject({ state: 'passed' });
  });

  it('asks for a look once the count is older than the yard allows', () => {
    const world: World = { walks: { '2026-09-01': [{ left: 12 }] } };
    expect(gateOf(world, '2026-10-16', 'counted').state).toBe('passed');
    expect(gateOf(world, '2026-10-17', 'counted').state).toBe('look');
  });

  it('is blocked when none are left, sold out or lost', () => {
    expect(wordsOf(gateOf({ walks: { '2026-09-01': [{ left: 0 }] } }, '2026-09-02', 'counted'))).toContain(
      'sold out',
    );
    const lost = gateOf({ walks: { '2026-09-01': [{ left: 0, lost: 20 }] } }, '2026-09-02', 'counted');
    expect(lost.state).toBe('blocked');
    expect(wordsOf(lost)).toContain('lost');
  });
});
