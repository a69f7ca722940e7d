/** A blank is not a pass: what nobody has noted never opens a form, and noting it never opens one without a reason. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOf } from '../../../tests/askGate.ts';
import type { Line, World } from '../../../tests/world.ts';
import { addDays, type Day, day, daysBetween } from '../days.ts';
import type { Form } from '../records/common.ts';
import { leafSigns, rootSigns, wheres, woodSigns } from '../records/walk.ts';
import type { FormAnswer } from './answers.ts';

const started = day('2026-06-06');
const dormantForms = ['dormant-pot', 'bare-root'] as const satisfies readonly Form[];
const fields = ['leaves', 'wood', 'where', 'roots'] as const;

const line = fc.record(
  {
    leaves: fc.constantFrom(...leafSigns),
    wood: fc.constantFrom(...woodSigns),
    where: fc.constantFrom(...wheres),
    roots: fc.constantFrom(...rootSigns),
  },
  { requiredKeys: [] },
);
const whole: Line = { left: 12, health: 'sound', heightCm: 60, caliperMm: 9 };
const sight = fc.record({
  line,
  looked: fc.integer({ min: 60, max: 300 }).map(days => addDays(started, days)),
  later: fc.integer({ min: 0, max: 40 }),
});

const worldOf = (on: Day, seen: Line): World => ({
  walks: { [on]: [{ ...whole, ...seen }] },
  lots: [{ severed: '2026-06-20', pottings: [{ date: '2026-06-20', container: '#1' }] }],
});

/** Day on which a form may be sold at the earliest: today when ready, null when no day is given. */
function earliest({ state, range }: FormAnswer, asOf: Day): Day | null {
  if (state === 'ready') return asOf;
  return state === 'opens' && range ? range.from : null;
}

describe('a blank', () => {
  it('opens no dormant form before the day on which the tree is taken to be dormant', () => {
    fc.assert(
      fc.property(sight, ({ line: seen, looked, later }) => {
        const asOf = addDays(looked, later);
        for (const form of dormantForms) {
          const answer = answerOf(worldOf(looked, seen), asOf, form);
          const on = earliest(answer, asOf);
          const dormant = answer.gates.find(({ name }) => name === 'dormant')!;
          if (on === null) continue;
          expect(['passed', 'opens']).toContain(dormant.state);
          if (dormant.range) expect(daysBetween(dormant.range.from, on)).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('of the wood never opens a form before ripe wood would, and green wood never before the blank', () => {
    fc.assert(
      fc.property(sight, fc.constantFrom('brown', 'part', 'green'), ({ line: seen, looked, later }, wood) => {
        const asOf = addDays(looked, later);
        const { wood: _blank, ...without } = seen;
        for (const form of dormantForms) {
          const blank = earliest(answerOf(worldOf(looked, without), asOf, form), asOf);
          const known = earliest(answerOf(worldOf(looked, { ...without, wood }), asOf, form), asOf);
          if (blank === null) continue;
          if (wood !== 'green') expect(known !== null && known <= blank).toBe(true);
          else if (known !== null) expect(known >= blank).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('that is filled opens a form earlier only with what was seen among the reasons', () => {
    fc.assert(
      fc.property(sight, fc.constantFrom(...fields), ({ line: seen, looked, later }, field) => {
        const value = seen[field];
        if (value === undefined) return;
        const asOf = addDays(looked, later);
        const { [field]: _blank, ...without } = seen;
        for (const form of ['leafed-pot', ...dormantForms] as const) {
          const blank = earliest(answerOf(worldOf(looked, without), asOf, form), asOf);
          const answer = answerOf(worldOf(looked, seen), asOf, form);
          const known = earliest(answer, asOf);
          if (known === null || (blank !== null && known >= blank)) continue;
          const told = answer.gates
            .flatMap(({ because }) => because)
            .filter(({ standing }) => standing === 'seen');
          expect(told.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 150 },
    );
  });
});
