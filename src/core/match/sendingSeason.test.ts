import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '../days.ts';
import { type Form, forms } from '../records/formNames.ts';
import { type FormSending, nextSending, sendingGroups } from './sendingSeason.ts';

const anyForm: fc.Arbitrary<FormSending> = fc.record({
  state: fc.constantFrom('open', 'by-forecast', 'closed'),
  from: fc.option(
    fc.record({
      state: fc.constantFrom('open', 'by-forecast'),
      monday: fc.integer({ min: 1, max: 300 }).map(days => addDays(day('2026-11-23'), days)),
    }),
    { nil: null },
  ),
});
const anySending = fc.record(Object.fromEntries(forms.map(form => [form, anyForm]))) as fc.Arbitrary<
  Record<Form, FormSending>
>;

describe('where the sending year stands', () => {
  it('names every form once, with its own state', () =>
    fc.assert(
      fc.property(anySending, sending => {
        const groups = sendingGroups(sending);
        expect(groups.flatMap(group => group.forms).sort()).toEqual([...forms].sort());
        for (const group of groups) {
          for (const form of group.forms) {
            expect(sending[form].state).toBe(group.state);
            if (group.state === 'closed') expect(sending[form].from).toEqual(group.from);
          }
        }
      }),
      { seed: 17, numRuns: 500 },
    ));

  it('gives a next day only where nothing leaves now, and the soonest', () =>
    fc.assert(
      fc.property(anySending, sending => {
        const all = Object.values(sending);
        const closed = all.every(({ state }) => state === 'closed');
        const days = all.flatMap(({ from }) => from?.monday ?? []).sort();
        expect(nextSending(sending)).toBe(closed ? (days[0] ?? null) : null);
      }),
      { seed: 17, numRuns: 500 },
    ));
});
