import { describe, expect, it } from 'vitest';
import { gateOf } from '../../../../tests/askGate.ts';
import type { World } from '../../../../tests/world.ts';

describe('weaned', () => {
  it('takes about six weeks from severing in a warm summer', () => {
    const gate = gateOf({}, '2026-07-20', 'weaned');
    expect(gate).toMatchObject({ state: 'opens', range: { from: '2026-08-21', to: '2026-08-21' } });
    expect(gateOf({}, '2026-08-20', 'weaned').state).toBe('opens');
    expect(gateOf({}, '2026-08-21', 'weaned').state).toBe('passed');
  });

  it('takes longer in the cold', () => {
    const world: World = {
      lots: [{ severed: '2026-11-01', pottings: [{ date: '2026-11-01', container: '#1' }] }],
    };
    const gate = gateOf(world, '2026-11-02', 'weaned');
    expect(gate.range!.from > '2026-12-20').toBe(true);
    expect(gate.range!.to < '2027-01-25').toBe(true);
  });

  it('asks for a look where the species has no figure for the method', () => {
    const world: World = { lots: [{ method: 'graft' }] };
    expect(gateOf(world, '2026-12-01', 'weaned').state).toBe('look');
  });
});
