import { describe, expect, it } from 'vitest';
import { gateOf, logOf } from '../../../../tests/askGate.ts';
import type { World } from '../../../../tests/world.ts';

describe('leafed', () => {
  const inLeaf: World = {
    walks: {
      '2026-08-20': [{ leaves: 'full', where: 'outdoors' }],
      '2026-09-10': [{ leaves: 'full', where: 'outdoors' }],
    },
  };
  const gate = (world: World, asOf: string) => gateOf(world, asOf, 'leafed', 'leafed-pot');

  it('passes in full leaf, hardened outdoors, and tells when leaves may come down', () => {
    const passed = gate(inLeaf, '2026-09-12');
    expect(passed.state).toBe('passed');
    expect(passed.closes! > '2026-09-30').toBe(true);
    expect(passed.closes! < '2026-11-15').toBe(true);
  });

  it('opens ten days after it came outdoors', () => {
    const world: World = { walks: { '2026-09-01': [{ leaves: 'full', where: 'outdoors' }] } };
    expect(gate(world, '2026-09-05')).toMatchObject({
      state: 'opens',
      range: { from: '2026-09-11', to: '2026-09-11' },
    });
  });

  it('is blocked under cover unless hardened before', () => {
    const world: World = { walks: { '2026-09-01': [{ leaves: 'full', where: 'tunnel' }] } };
    expect(gate(world, '2026-09-05').state).toBe('blocked');
    const carriedIn: World = {
      walks: { ...inLeaf.walks, '2026-10-20': [{ leaves: 'full', where: 'tunnel' }] },
    };
    expect(gate(carriedIn, '2026-11-05').state).toBe('passed');
    expect(gate(carriedIn, '2026-11-10').state).toBe('blocked');
  });

  it('does not promise leaves that the weather has taken since', () => {
    const world: World = { ...inLeaf, log: logOf('2026-09-10', '2026-10-05', -4, 9) };
    const lost = gate(world, '2026-10-05');
    expect(lost.state).toBe('opens');
    expect(lost.range!.from > '2027-03-01').toBe(true);
  });

  it('wants a look when leaves were seen too long ago', () => {
    expect(gate({ ...inLeaf, log: logOf('2026-09-10', '2026-10-26', 8, 18) }, '2026-10-26').state).toBe(
      'look',
    );
  });

  it('opens again in spring for a bare tree, and wants a look after that', () => {
    const world: World = { walks: { '2026-12-01': [{ leaves: 'bare' }] } };
    const bare = gate(world, '2026-12-05');
    expect(bare.state).toBe('opens');
    expect(bare.range!.from > '2027-04-01').toBe(true);
    expect(bare.range!.to < '2027-06-15').toBe(true);
    expect(gate(world, '2027-06-20').state).toBe('look');
  });
});
