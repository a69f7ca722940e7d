import { describe, expect, it } from 'vitest';
import { answerOf, gateOf, logOf, wordsOf } from '../../../../tests/askGate.ts';
import { southern, tropics, type World } from '../../../../tests/world.ts';

describe('dormant', () => {
  const bare: World = {
    walks: {
      '2026-11-01': [{ leaves: 'falling', wood: 'part' }],
      '2026-11-15': [{ leaves: 'bare', wood: 'brown' }],
    },
  };
  const gate = (world: World, asOf: string) => gateOf(world, asOf, 'dormant');

  it('passes once a bare tree with ripe wood has its chill: 200 hours in its pot, 300 to bare its roots', () => {
    // Days of 0 to 7 C give 24 hours each.
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-25', 0, 7) };
    expect(gate(world, '2026-11-08').state).toBe('opens');
    expect(gate({ ...bare, log: logOf('2026-11-01', '2026-11-25', 0, 7) }, '2026-11-16').state).toBe(
      'passed',
    );
    const early: World = { ...world, walks: { '2026-11-01': [{ leaves: 'bare', wood: 'brown' }] } };
    expect(gate(early, '2026-11-08').state).toBe('opens');
    expect(gate(early, '2026-11-09').state).toBe('passed');
    expect(gateOf(early, '2026-11-12', 'dormant', 'bare-root').state).toBe('opens');
    expect(gateOf(early, '2026-11-13', 'dormant', 'bare-root').state).toBe('passed');
  });

  it('calls a bare tree that has not met cold leafless, not yet dormant', () => {
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-20', 9, 19) };
    const waiting = gate(world, '2026-11-20');
    expect(waiting.state).toBe('opens');
    expect(wordsOf(waiting)).toContain('Leafless, not yet dormant.');
    expect(wordsOf(waiting)).toContain('about 0 such hours in 20 days logged');
  });

  it('wants a look in a warm week, which may wake a tree that slept', () => {
    const cold = logOf('2026-11-01', '2026-11-30', 0, 7);
    const world = (days: number): World => ({
      ...bare,
      walks: { '2026-11-01': [{ leaves: 'bare', wood: 'brown' }] },
      log: [...cold, ...logOf('2026-12-01', `2026-12-0${days}`, 8, 18)],
    });
    expect(gate(world(2), '2026-12-02').state).toBe('passed');
    const warm = gate(world(7), '2026-12-07');
    expect(warm.state).toBe('look');
    expect(wordsOf(warm)).toContain('may be waking');
  });

  it('asks to move a tree out that is kept in leaf under cover, and gives no day', () => {
    for (const where of ['tunnel', 'store'] as const) {
      const world: World = { walks: { '2026-11-20': [{ leaves: 'full', where }] } };
      const kept = gate(world, '2026-11-25');
      expect(kept.state).toBe('look');
      expect(kept.range).toBeNull();
      expect(wordsOf(kept)).toContain('Move it out');
      expect(answerOf(world, '2026-11-25', 'bare-root').state).not.toBe('opens');
    }
  });

  it('does not take leaves stripped by one frost for dormancy', () => {
    const world: World = {
      walks: { '2026-10-12': [{ leaves: 'bare', wood: 'brown' }] },
      log: [...logOf('2026-10-01', '2026-10-10', 8, 20), ...logOf('2026-10-11', '2026-10-11', -3, 12)],
    };
    expect(gate(world, '2026-10-12').state).toBe('opens');
  });

  it('is blocked by green wood, and wants a look once that was seen long ago', () => {
    const world: World = { walks: { '2026-11-15': [{ leaves: 'bare', wood: 'green' }] } };
    expect(gate(world, '2026-12-01').state).toBe('blocked');
    expect(gate(world, '2027-01-15').state).toBe('look');
  });

  it('wants a look at wood nobody has seen, and before that waits for the chill like ripe wood', () => {
    const unseen: World = { walks: { '2026-11-15': [{ leaves: 'bare' }] } };
    const seen: World = { walks: { '2026-11-15': [{ leaves: 'bare', wood: 'brown' }] } };
    expect(gate(unseen, '2026-12-28').state).toBe('look');
    const waiting = gate(unseen, '2026-11-16');
    expect(waiting.state).toBe('opens');
    expect(waiting.range).toEqual(gate(seen, '2026-11-16').range);
    expect(wordsOf(waiting)).toContain('Nobody has noted whether the wood is brown');
  });

  it('opens in late autumn for a tree in leaf, and wants a look when it should be asleep', () => {
    const world: World = { walks: { '2026-09-10': [{ leaves: 'full', where: 'outdoors' }] } };
    const ahead = gate(world, '2026-09-12');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2026-11-01').toBe(true);
    expect(ahead.range!.to < '2027-01-10').toBe(true);
    expect(gate(world, '2027-01-20').state).toBe('look');
  });

  it('opens next autumn for leaves seen in spring: a late frost does not count', () => {
    const world: World = {
      walks: { '2027-04-25': [{ leaves: 'full', where: 'outdoors' }] },
      log: logOf('2027-04-26', '2027-05-02', -4, 10),
    };
    const ahead = gate(world, '2027-05-02');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2027-10-15').toBe(true);
  });

  it('wants a look once buds may have broken, and trusts a fresh one', () => {
    expect(gate(bare, '2027-02-01').state).toBe('passed');
    expect(gate(bare, '2027-04-20').state).toBe('look');
    const late: World = { walks: { ...bare.walks, '2027-04-18': [{ leaves: 'bare' }] } };
    expect(gate(late, '2027-04-20').state).toBe('passed');
    expect(gate(late, '2027-04-28').state).toBe('look');
  });

  it('lets trees in the store sleep on while somebody looks at them', () => {
    const store: World = {
      walks: { ...bare.walks, '2027-04-01': [{ leaves: 'bare', where: 'store' }] },
    };
    expect(gate(store, '2027-05-10')).toMatchObject({ state: 'passed', closes: null });
    const unseen = gate(store, '2027-05-20');
    expect(unseen.state).toBe('look');
    expect(wordsOf(unseen)).toContain('is still dormant');
  });

  it('says that it never gets cold enough where that is so', () => {
    const world: World = { ...bare, home: tropics };
    const blocked = gate(world, '2026-12-20');
    expect(blocked.state).toBe('blocked');
    expect(wordsOf(blocked)).toContain('in fewer than 1 of 10 years');
  });

  it('turns with the year south of the equator', () => {
    const world: World = {
      home: southern,
      walks: { '2026-04-10': [{ leaves: 'full', where: 'outdoors' }] },
      lots: [
        { started: '2025-12-06', severed: '2026-01-11', pottings: [{ date: '2026-01-11', container: '#1' }] },
      ],
    };
    const ahead = gate(world, '2026-04-12');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2026-05-01').toBe(true);
    expect(ahead.range!.to < '2026-08-01').toBe(true);
    const leaves = gateOf(
      { ...world, walks: { '2026-07-10': [{ leaves: 'bare' }] } },
      '2026-07-12',
      'leafed',
      'leafed-pot',
    );
    expect(leaves.range!.from > '2026-09-15').toBe(true);
    expect(leaves.range!.to < '2027-01-01').toBe(true);
  });
});
