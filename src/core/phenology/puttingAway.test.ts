import { describe, expect, it } from 'vitest';
import { fahrenheitToCelsius } from '../units.ts';
import {
  puttingAway,
  puttingAwayNightsC,
  puttingAwayReasons,
  ripenesses,
  ripenessOf,
} from './puttingAway.ts';

const figRoots = {
  rootInjuryC: { value: -4, low: -4, high: -4, unit: 'C', standing: 'ours', source: '' },
} as never;
const jujubeRoots = {
  rootInjuryC: { value: -9, low: -9, high: -9, unit: 'C', standing: 'ours', source: '' },
} as never;

describe('how ripe a tree is', () => {
  it.each([
    // fig in a pot of so many liters, first winter, wood seen
    [3.3, false, null, 'soft'],
    [4, false, 'brown', 'soft'],
    [4.1, false, 'brown', 'half-ripe'],
    [11, true, 'brown', 'soft'],
    [11, false, 'green', 'soft'],
    [11, false, 'part', 'half-ripe'],
    [11, false, null, 'half-ripe'],
    [18.9, false, 'brown', 'half-ripe'],
    [19, false, 'brown', 'ripe'],
    [53, false, null, 'ripe'],
    [53, false, 'part', 'half-ripe'],
    [53, false, 'green', 'soft'],
    [53, true, null, 'soft'],
  ] as const)('%f liters, first winter %s, wood %s: %s', (potLiters, firstWinter, wood, expected) => {
    expect(ripenessOf({ species: figRoots, potLiters, firstWinter, wood })).toBe(expected);
  });

  it('of a species with hardy roots is hardy at any age', () => {
    expect(ripenessOf({ species: jujubeRoots, potLiters: 3, firstWinter: true, wood: 'green' })).toBe(
      'hardy',
    );
  });
});

describe('the rule', () => {
  it('keeps the young out of the published damage and asks of the old what growers ask', () => {
    // Rutgers fact sheet FS1198: 25 to 27 F in early fall. Common practice, no source: about 25 to 20 F.
    expect(puttingAway.soft.beforeF).toBe(27);
    expect(puttingAway['half-ripe'].beforeF).toBe(25);
    expect(puttingAway.ripe).toMatchObject({ meetsF: 24, beforeF: 20, waitsForLeaves: true });
    expect(puttingAway.hardy.beforeF).toBe(15);
    for (const name of ripenesses) {
      expect(puttingAwayNightsC(name).beforeC).toBeCloseTo(fahrenheitToCelsius(puttingAway[name].beforeF));
      expect(puttingAwayNightsC(name).meetsC).toBeGreaterThan(puttingAwayNightsC(name).beforeC);
      expect(puttingAway[name].when).toContain(
        `${puttingAway[name].beforeF === 20 ? 'colder' : puttingAway[name].beforeF}`,
      );
    }
  });

  it('says what is published, practice and ours', () => {
    expect(puttingAwayReasons('soft').map(({ standing }) => standing)).toEqual([
      'published',
      'ours',
      'published',
    ]);
    expect(puttingAwayReasons('ripe').map(({ standing }) => standing)).toEqual(['practice', 'published']);
    expect(puttingAwayReasons('hardy').map(({ standing }) => standing)).toEqual(['ours', 'published']);
  });
});
