import { describe, expect, it } from 'vitest';
import { gateOf, logOf, wordsOf } from '../../../../tests/askGate.ts';
import type { World } from '../../../../tests/world.ts';

describe('lifting', () => {
  const gate = (world: World, asOf: string) => gateOf(world, asOf, 'lifting', 'bare-root');
  const bare: World = { walks: { '2026-11-15': [{ leaves: 'bare', wood: 'brown' }] } };

  it('passes once the soil is cold, until buds may break', () => {
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-20', 0, 8) };
    const passed = gate(world, '2026-11-20');
    expect(passed.state).toBe('passed');
    expect(passed.closes! > '2027-03-01').toBe(true);
  });

  it('opens later in a warm autumn', () => {
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-20', 10, 20) };
    expect(gate(world, '2026-11-20').state).toBe('opens');
  });

  it('opens next autumn once buds may have broken', () => {
    const ahead = gate(bare, '2027-05-01');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2027-10-15').toBe(true);
  });

  it('passes for a lot that is lifted, as long as bare roots keep', () => {
    const world: World = { ...bare, lots: [{ lifted: '2026-12-01' }] };
    expect(gate(world, '2027-01-30').state).toBe('passed');
    const spent = gate(world, '2027-01-31');
    expect(spent.state).toBe('blocked');
    expect(wordsOf(spent)).toContain('pot them up');
  });
});
