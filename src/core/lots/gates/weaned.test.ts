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

  it('asks nothing of a graft: its rootstock has roots', () => {
    expect(gateOf({ lots: [{ method: 'graft' }] }, '2026-06-10', 'weaned').state).toBe('passed');
  });

  it('asks for a look where the species has no figure for the method', () => {
    expect(gateOf({ lots: [{ method: 'division' }] }, '2026-12-01', 'weaned').state).toBe('look');
  });

  describe('of a cutting', () => {
    const cutting: World = {
      lots: [
        { method: 'cutting', started: '2026-03-01', pottings: [{ date: '2026-10-20', container: '#1' }] },
      ],
    };

    it('counts from when roots hold, which a winter in the pot puts off to the next warmth', () => {
      const rooted = gateOf(cutting, '2026-11-25', 'rooted');
      const gate = gateOf(cutting, '2026-11-25', 'weaned');
      expect(gate.state).toBe('opens');
      expect(gate.range!.from > rooted.range!.from).toBe(true);
      expect(gate.range!.to > rooted.range!.to).toBe(true);
      expect(gate.range!.from > '2027-04-15').toBe(true);
    });

    it('counts from the day on which roots were seen to hold where that is earlier', () => {
      const seen: World = { ...cutting, walks: { '2026-11-20': [{ roots: 'holding' }] } };
      const gate = gateOf(seen, '2026-11-25', 'weaned');
      expect(gate.range!.to < gateOf(cutting, '2026-11-25', 'weaned').range!.from).toBe(true);
    });

    it('is never over before the roots hold', () => {
      for (const asOf of ['2026-03-20', '2026-06-01', '2026-12-01', '2027-04-01', '2027-05-20']) {
        const [roots, weaning] = (['rooted', 'weaned'] as const).map(name => gateOf(cutting, asOf, name));
        if (roots!.state === 'opens') expect(weaning!.state).toBe('opens');
      }
    });
  });
});
