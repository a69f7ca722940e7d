/** Which cultivars are judged as one, and how far apart two are. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alternatives } from '../../src/core/match/alternatives.ts';
import { needsWasp } from '../../src/core/match/ripening.ts';
import { kindNumber } from '../../src/core/match/sharedVerdicts.ts';
import { pollinationHabits } from '../../src/core/records/cultivar.ts';
import { context, cultivar, fig, matchPlace, placeNamed } from './places.ts';

const johnson = placeNamed('johnson');

describe('cultivars of a kind', () => {
  const all = {
    crops: [['main'], ['breba'], ['breba', 'main'], ['main', 'breba']],
    ripening: ['very-early', 'early', 'mid', 'late', 'very-late'],
    pollination: [...pollinationHabits],
    chromosomes: [null, 60, 90],
    eye: ['closed', 'sealed', 'half-open', 'open', 'none'],
    splits: ['low', 'some', 'high'],
    rain: ['good', 'fair', 'poor'],
  } as const;

  it('share a number only where nothing that is judged differs', () => {
    const one = fc.record({
      crops: fc.constantFrom(...all.crops),
      ripening: fc.constantFrom(...all.ripening),
      pollination: fc.constantFrom(...all.pollination),
      chromosomes: fc.constantFrom(...all.chromosomes),
      eye: fc.constantFrom(...all.eye),
      splits: fc.constantFrom(...all.splits),
      rain: fc.constantFrom(...all.rain),
    });
    const seen = new Map<number, string>();
    fc.assert(
      fc.property(one, ({ crops, ripening, pollination, chromosomes, eye, splits, rain }) => {
        const judged = cultivar({
          crops: [...crops],
          ripening,
          pollination,
          chromosomes,
          fruit: { ...cultivar().fruit, eye, splits, rain },
        });
        const sets = crops.map(crop => needsWasp(pollination, crop));
        const told = JSON.stringify([
          crops,
          ripening,
          sets,
          pollination === 'partner',
          chromosomes,
          eye,
          splits,
          rain,
        ]);
        const number = kindNumber(judged);
        // Two pollinations that ask for the same wasps for these crops may share a number, or not.
        expect(seen.get(number) ?? told).toBe(told);
        seen.set(number, told);
      }),
      { numRuns: 20_000 },
    );
    expect(seen.size).toBeGreaterThan(8_000);
  });
});

describe('alternatives by their distance', () => {
  const wanted = cultivar({ id: 'wanted', ripening: 'early' });
  const order = (...others: Parameters<typeof cultivar>[0][]) =>
    alternatives(
      wanted,
      others.map(over => ({ cultivar: cultivar(over), match: null })),
      99,
    ).map(({ cultivar: id }) => id);

  it('counts two for another flavor, three for another species, one a class', () => {
    expect(
      order(
        { id: 'species', ripening: 'early', species: 'mulberry' },
        { id: 'b-two-classes', ripening: 'late' },
        { id: 'a-flavor', ripening: 'early', flavor: 'toffee' },
        { id: 'class', ripening: 'mid' },
        { id: 'three-classes', ripening: 'very-late' },
        { id: 'same', ripening: 'early' },
      ),
    ).toEqual(['same', 'class', 'a-flavor', 'b-two-classes', 'species', 'three-classes']);
  });

  it('counts one a level, and offers five', () => {
    const match = (level: string) => ({ ...matchPlace(johnson, wanted, fig, context), level }) as never;
    const found = alternatives(wanted, [
      { cultivar: cultivar({ id: 'gamble', ripening: 'early' }), match: match('a-gamble') },
      { cultivar: cultivar({ id: 'home-mid', ripening: 'mid' }), match: match('at-home') },
      { cultivar: cultivar({ id: 'care', ripening: 'early' }), match: match('with-care') },
      { cultivar: cultivar({ id: 'home', ripening: 'early' }), match: match('at-home') },
      { cultivar: cultivar({ id: 'not', ripening: 'early' }), match: match('not-here') },
    ]);
    expect(found.map(({ cultivar: id }) => id)).toEqual(['home', 'care', 'home-mid', 'gamble']);
    const many = Array.from({ length: 9 }, (_, i) => ({ cultivar: cultivar({ id: `c${i}` }), match: null }));
    expect(alternatives(wanted, many)).toHaveLength(5);
  });
});
