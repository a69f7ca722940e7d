import { describe, expect, it } from 'vitest';
import { gateOf, wordsOf } from '../../../../tests/askGate.ts';
import type { World } from '../../../../tests/world.ts';

describe('sized', () => {
  const measured = (heightCm: number, caliperMm: number): World => ({
    walks: { '2026-08-01': [{ heightCm, caliperMm }] },
  });

  it('passes at the smallest size the yard sells, and stays passed: trees do not shrink', () => {
    expect(gateOf(measured(40, 6), '2026-08-02', 'sized').state).toBe('passed');
    expect(gateOf(measured(40, 6), '2027-02-02', 'sized').state).toBe('passed');
  });

  it('is blocked with what is missing', () => {
    const gate = gateOf(measured(30, 7), '2026-08-02', 'sized');
    expect(gate.state).toBe('blocked');
    expect(wordsOf(gate)).toContain(
      '4 in (10 cm) less than the 16 in (40 cm) that is the minimum in a #1 pot',
    );
  });

  it('asks to measure again in the growing season, not in winter', () => {
    expect(gateOf(measured(30, 7), '2026-09-25', 'sized').state).toBe('look');
    expect(gateOf(measured(30, 7), '2027-01-25', 'sized').state).toBe('blocked');
  });

  it('asks for a first measure', () => {
    expect(gateOf({}, '2026-08-02', 'sized').state).toBe('look');
    const half = gateOf({ walks: { '2026-08-01': [{ heightCm: 60 }] } }, '2026-08-02', 'sized');
    expect(half.state).toBe('look');
    expect(wordsOf(half)).toContain('stem');
  });

  it('does not print a difference too small to measure', () => {
    expect(wordsOf(gateOf(measured(50, 5.6), '2026-08-02', 'sized'))).toContain('just under');
  });

  it('is blocked in a pot smaller than any that is sold, and takes the limit of the next smaller class above', () => {
    const inPot = (container: string): World => ({
      ...measured(60, 9),
      lots: [{ pottings: [{ date: '2026-07-11', container }] }],
    });
    expect(gateOf(inPot('SP4'), '2026-08-02', 'sized').state).toBe('blocked');
    expect(wordsOf(gateOf(inPot('#3'), '2026-08-02', 'sized'))).toContain('in a #1 pot');
  });
});
