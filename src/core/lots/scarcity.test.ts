import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { availabilities } from '../records/cultivar.ts';
import { scarcityOf } from './scarcity.ts';

const plenty = { raised: 30, sold: 5, left: 25 };

describe('scarcity', () => {
  it.each([
    ['common', 0],
    ['some', 1],
    ['a-few', 2],
    ['nowhere-else', 3],
  ] as const)('starts at how widely it is offered: %s at %i', (offered, steps) => {
    expect(scarcityOf({ offered, mothers: 5, requests: 0 }, plenty).answer).toBe(steps);
  });

  it('tells every step', () => {
    const { answer, because } = scarcityOf(
      { offered: 'some', mothers: 1, requests: 0 },
      { raised: 10, sold: 9, left: 1 },
    );
    expect(answer).toBe(3);
    expect(because.map(({ text }) => text)).toEqual([
      'Offered by some: starts at 1.',
      'Only one mother plant: one step up.',
      '9 of the 10 raised in the last two seasons are sold: one step up.',
    ]);
  });

  it('goes down for a cultivar that is raised in numbers', () => {
    expect(
      scarcityOf({ offered: 'some', mothers: 9, requests: 0 }, { raised: 150, sold: 20, left: 130 }).answer,
    ).toBe(0);
  });

  it('does not judge by a handful of plants', () => {
    expect(
      scarcityOf({ offered: 'some', mothers: 9, requests: 0 }, { raised: 3, sold: 3, left: 0 }).answer,
    ).toBe(1);
  });

  it('rises when more people wait than there are plants, and never tells how many', () => {
    const { answer, because } = scarcityOf({ offered: 'some', mothers: 9, requests: 7391 }, plenty);
    expect(answer).toBe(2);
    const words = JSON.stringify(because);
    expect(words).toContain('More people ask for it than we can supply');
    expect(words).not.toContain('7391');
    expect(scarcityOf({ offered: 'some', mothers: 9, requests: 25 }, plenty).answer).toBe(1);
  });

  it('never calls a widely offered cultivar scarcer than 2, and says so', () => {
    const { answer, because } = scarcityOf(
      { offered: 'common', mothers: 0, requests: 99 },
      { raised: 10, sold: 10, left: 0 },
    );
    expect(answer).toBe(2);
    expect(because.at(-1)!.text).toBe('Kept at 2, since it is widely offered.');
  });

  it('never falls when it is offered less, has fewer mothers, fewer left or more people waiting', () => {
    const count = fc.nat(120);
    fc.assert(
      fc.property(
        fc.nat(3),
        fc.nat(3),
        count,
        count,
        count,
        count,
        count,
        count,
        fc.nat(60),
        (o1, o2, m1, m2, r1, r2, l1, l2, sold) => {
          const ask = (offered: number, mothers: number, requests: number, left: number) =>
            // Offered from the rarest to the commonest, so that a higher number is always the less scarce case.
            scarcityOf({ offered: availabilities[offered]!, mothers, requests }, { raised: 60, sold, left })
              .answer;
          const scarce = ask(Math.min(o1, o2), Math.min(m1, m2), Math.max(r1, r2), Math.min(l1, l2));
          const common = ask(Math.max(o1, o2), Math.max(m1, m2), Math.min(r1, r2), Math.max(l1, l2));
          expect(scarce).toBeGreaterThanOrEqual(common);
        },
      ),
      { seed: 61, numRuns: 500 },
    );
  });
});
