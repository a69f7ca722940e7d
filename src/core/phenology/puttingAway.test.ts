import { describe, expect, it } from 'vitest';
import { fahrenheitToCelsius } from '../units.ts';
import {
  beforeTheNight,
  puttingAway,
  puttingAwayNightsC,
  puttingAwayReasons,
  type Ripeness,
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
    // fig in a pot of so many litres, first winter, wood seen
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
  ] as const)('%f litres, first winter %s, wood %s: %s', (potLitres, firstWinter, wood, expected) => {
    expect(ripenessOf({ species: figRoots, potLitres, firstWinter, wood })).toBe(expected);
  });

  it('of a species with hardy roots is hardy at any age', () => {
    expect(ripenessOf({ species: jujubeRoots, potLitres: 3, firstWinter: true, wood: 'green' })).toBe(
      'hardy',
    );
  });
});

describe('the nights of a fall', () => {
  /** Coldest first come the mild ones: the night before which it goes in, null when it stays out. */
  function goesInBefore(
    ripeness: Ripeness,
    nightsF: readonly number[],
    leavesDownAfter: number,
  ): number | null {
    let coldestSoFarF = 50;
    for (const [at, forecastF] of nightsF.entries()) {
      const answer = beforeTheNight(ripeness, {
        forecastF,
        coldestSoFarF,
        leavesDown: at >= leavesDownAfter,
      });
      if (answer === 'goes-in') return forecastF;
      coldestSoFarF = Math.min(coldestSoFarF, forecastF);
    }
    return null;
  }

  it('bring a young fig in before the 26 F night at the latest, an old one not before it has met 24 F', () => {
    expect(goesInBefore('soft', [31, 29, 26, 24], 99)).toBe(26);
    expect(goesInBefore('ripe', [31, 29, 26, 24], 0)).toBeNull();
    expect(goesInBefore('ripe', [31, 29, 26, 24, 19], 0)).toBe(19);
    expect(goesInBefore('ripe', [26, 24, 28], 0)).toBe(28);
    expect(goesInBefore('ripe', [26, 24, 28], 99)).toBeNull();
  });

  it('bring a half-ripe one in once its leaves are down and it has met a light frost', () => {
    expect(goesInBefore('half-ripe', [31, 29, 28, 30], 1)).toBe(30);
    expect(goesInBefore('half-ripe', [31, 29, 28, 30], 99)).toBeNull();
    expect(goesInBefore('half-ripe', [31, 25], 99)).toBe(25);
    expect(goesInBefore('half-ripe', [35, 34, 33], 0)).toBeNull();
  });

  it('leave hardy roots out to 15 F unless the leaves are down', () => {
    expect(goesInBefore('hardy', [25, 20, 16, 15], 99)).toBe(15);
    expect(goesInBefore('hardy', [25, 22], 1)).toBe(22);
  });

  it('a young one may go in on leaf fall alone', () => {
    expect(goesInBefore('soft', [45, 44], 1)).toBe(44);
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
