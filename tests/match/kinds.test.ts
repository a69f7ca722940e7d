/** Cultivars of a kind share what is said of them: each is still told what it would be told alone. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sineDegreeDays } from '../../src/core/climate/degreeDays.ts';
import { sumTabledDegreeDays } from '../../src/core/climate/heat.ts';
import { matchAll } from '../../src/core/match/match.ts';
import type { Crop } from '../../src/core/records/common.ts';
import type { Trial } from '../../src/core/records/cultivar.ts';
import { pollinationHabits } from '../../src/core/records/cultivar.ts';
import { context, cultivar, fig, matchPlace, placeNamed } from './places.ts';

const trial: Trial = {
  class: placeNamed('johnson').class,
  where: 'Topeka',
  place: null,
  crop: 'main',
  from: 2019,
  to: 2022,
  winter: 'died-back',
  ripened: 'most',
  note: null,
};

const cultivars = fc
  .record({
    hardinessOffsetC: fc.constantFrom(-2, 0, 1.5),
    ripening: fc.constantFrom('very-early' as const, 'early' as const, 'mid' as const, 'late' as const),
    crops: fc.constantFrom<Crop[][]>(['main'], ['breba', 'main'], ['main', 'breba']),
    pollination: fc.constantFrom(...pollinationHabits),
    eye: fc.constantFrom(
      'closed' as const,
      'sealed' as const,
      'half-open' as const,
      'open' as const,
      'none' as const,
    ),
    splits: fc.constantFrom('low' as const, 'some' as const, 'high' as const),
    rain: fc.constantFrom('good' as const, 'fair' as const, 'poor' as const),
    tried: fc.boolean(),
  })
  .map(({ eye, splits, rain, tried, ...rest }) =>
    cultivar({ ...rest, fruit: { ...cultivar().fruit, eye, splits, rain }, trials: tried ? [trial] : [] }),
  );

it.each(['johnson', 'davis', 'bonn'] as const)('the answers of many at %s are those of each alone', name => {
  const place = placeNamed(name);
  fc.assert(
    fc.property(fc.array(cultivars, { minLength: 2, maxLength: 40 }), listed => {
      const together = matchAll(place, listed, [fig], context);
      expect(together).toEqual(listed.map(each => matchPlace(place, each, fig, context)));
    }),
    { seed: 20261125, numRuns: 60 },
  );
});

// Baskerville and Emin 1969, the single sine method, computed without a table.
it('sums of heat are the single-sine degree days of the days before', () => {
  const night = fc.float({ min: -30, max: 30, noNaN: true });
  const swing = fc.float({ min: 0, max: 25, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(night, swing), { minLength: 1, maxLength: 50 }),
      fc.constantFrom(8, 10, 11),
      (days, base) => {
        const tminC = Float32Array.from(days, ([low]) => low);
        const tmaxC = Float32Array.from(days, ([low, by]) => low + by);
        const sums = new Float64Array(days.length + 1);
        sumTabledDegreeDays(sums, { tminC, tmaxC }, 0, days.length, base, 36);
        let sum = 0;
        for (const [i, low] of tminC.entries()) {
          expect(sums[i]).toBeCloseTo(sum, 2);
          sum += sineDegreeDays(low, tmaxC[i]!, base, 36);
        }
        expect(sums[days.length]).toBeCloseTo(sum, 2);
      },
    ),
    { seed: 20261125, numRuns: 300 },
  );
});
