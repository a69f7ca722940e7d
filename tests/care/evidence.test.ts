import { describe, expect, it } from 'vitest';
import { freezeThroughHours, mixFollower } from '../../src/core/care/potFreeze.ts';
import { limitC, protectionFigures, winterProtection } from '../../src/core/care/protection.ts';
import {
  plantedStages,
  plantedWateringDays,
  plantedWaterLiters,
  potWateringDays,
  usualCaliperMm,
  waterLiters,
} from '../../src/core/care/watering.ts';
import { careTables } from '../../src/core/evidence/careTables.ts';
import { realSpecies, speciesIds } from './realPlaces.ts';

describe('evidence of care', () => {
  it.each(careTables().flatMap(({ id, rows }) => rows.map(row => [id, row.what, row] as const)))(
    '%s: %s',
    (_id, _what, { ok, source, expected, got }) => {
      expect(source).not.toBe('');
      expect(ok, `${got}, not ${expected}`).toBe(true);
    },
  );
});

describe('a pot in the cold', () => {
  it('takes longer the larger, the wetter-walled and the milder', () => {
    expect(freezeThroughHours(53, -5)).toBeGreaterThan(freezeThroughHours(11, -5));
    expect(freezeThroughHours(11, -2)).toBeGreaterThan(freezeThroughHours(11, -5));
    expect(freezeThroughHours(11, -5, 0.1)).toBeCloseTo(2 * freezeThroughHours(11, -5));
    expect(freezeThroughHours(11, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('holds at 0 C until it is frozen through, follows the air then, and thaws slowly', () => {
    const mix = mixFollower(11);
    // 36 hours at -5 C: the second day freezes it through.
    expect([mix(-5), mix(-5), mix(-8), mix(4), mix(4)]).toEqual([0, -5, -8, 0, 4]);
    const wave = mixFollower(11);
    expect([wave(-3), wave(2), wave(-3), wave(6)]).toEqual([0, 0, 0, 6]);
  });

  it('follows two days when it is large', () => {
    const mix = mixFollower(53);
    for (let day = 0; day < 10; day += 1) mix(-10);
    expect(mix(-20)).toBe(-15);
  });
});

describe('watering', () => {
  it('is more frequent in thirstier air and in smaller pots, between one and ten days', () => {
    for (const liters of [1, 3, 11, 53]) {
      const days = [0, 0.3, 1, 2, 4, 6, 9].map(mm => potWateringDays(mm, liters));
      expect([...days].sort((a, b) => b - a)).toEqual(days);
      for (const count of days) expect(count >= 1 && count <= 10).toBe(true);
    }
    expect(potWateringDays(4, 3)).toBeLessThan(potWateringDays(4, 11));
    expect(potWateringDays(0, 11)).toBe(10);
    expect(waterLiters(11)).toEqual({ low: 1.7, high: 2.8 });
  });

  it('of a new tree stretches with its roots and with cool weather, between one day and fourteen', () => {
    for (const mm of [0, 1, 3, 5, 8]) {
      const [first, rooting, later] = plantedStages.map(stage => plantedWateringDays(stage, mm));
      expect(first! <= rooting! && rooting! <= later!).toBe(true);
      expect(first! >= 1 && later! <= 14).toBe(true);
    }
    expect(plantedStages.map(stage => plantedWateringDays(stage, 5))).toEqual([1, 2.5, 7]);
    expect(plantedWateringDays('first-year', 0)).toBe(14);
    // A 3/4-in stem in a #3 pot: 1.9 gallons against 3.1 liters of the pot.
    expect(plantedWaterLiters(19.05, 11.4)).toBeCloseTo(7.1, 1);
    expect(usualCaliperMm(11.4)).toBeCloseTo(19.05, 2);
    expect(usualCaliperMm(3.3)).toBeLessThan(usualCaliperMm(53));
  });
});

describe('winter protection', () => {
  it('never asks for less cover in a colder place or for a younger tree', () => {
    const rank = (method: string) => protectionFigures.findIndex(figure => figure.method === method);
    for (const id of speciesIds) {
      const species = realSpecies(id);
      for (let lowC = 10; lowC > -45; lowC -= 1) {
        const ranks = ([1, 2, 3] as const).map(winter =>
          rank(winterProtection(species, winter, lowC).method),
        );
        expect(
          [...ranks].sort((a, b) => b - a),
          `${id} at ${lowC}`,
        ).toEqual(ranks);
        expect(rank(winterProtection(species, 1, lowC - 1).method)).toBeGreaterThanOrEqual(ranks[0]!);
      }
      expect(limitC(species, 1)).toBeGreaterThanOrEqual(limitC(species, 2));
      expect(limitC(species, 2)).toBeGreaterThanOrEqual(limitC(species, 3));
    }
  });

  it('says what it rests on', () => {
    const { method, because } = winterProtection(realSpecies('fig'), 3, -9);
    // Dormant figs stand 12 to 15 F: California Rare Fruit Growers, Fig Fruit Facts, 1996. Low -9 C (16 F) leaves about 1 C.
    expect(method).toBe('mulch');
    expect(because.map(({ standing }) => standing)).toEqual(['modeled', 'published']);
  });
});
