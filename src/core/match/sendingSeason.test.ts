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

  it('tells first what is sent every week, then what goes by the forecast, then what has a day, then what has none', () => {
    const monday = (date: string, state: 'open' | 'by-forecast' = 'open') => ({ state, monday: day(date) });
    const order = (...[leafed, potted, bare]: FormSending[]) =>
      sendingGroups({ 'leafed-pot': leafed!, 'dormant-pot': potted!, 'bare-root': bare! }).map(
        ({ forms: names }) => names.join(' '),
      );
    const [open, forecast] = [
      { state: 'open', from: null },
      { state: 'by-forecast', from: null },
    ] as const;
    const closed = (from: FormSending['from']): FormSending => ({ state: 'closed', from });
    expect(order(closed(null), forecast, open)).toEqual(['bare-root', 'dormant-pot', 'leafed-pot']);
    expect(order(closed(monday('2027-03-08')), closed(null), closed(monday('2027-03-01')))).toEqual([
      'bare-root',
      'leafed-pot',
      'dormant-pot',
    ]);
    // Alike stand together; a better week to come tells apart only what is closed.
    expect(order({ ...open, from: monday('2027-03-08') }, open, forecast)).toEqual([
      'leafed-pot dormant-pot',
      'bare-root',
    ]);
    const march = monday('2027-03-01');
    expect(order(closed(march), closed({ ...march, state: 'by-forecast' }), closed(march))).toHaveLength(2);
  });

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
