/** This week's forecast, typed in. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '../../src/core/days.ts';
import { judgeTyped, typedDays } from '../../src/core/match/typedForecast.ts';
import { normaliseSending } from '../../src/core/records/sending.ts';

const rules = normaliseSending({
  weekdays: ['mon'],
  transit_days: 3,
  limits: { 'bare-root': { plain: {}, lined: {} } },
  by_hand: [{ from: '2026-12-21', to: '2027-01-03', state: 'closed', why: 'Depots are full.' }],
  not_to: [],
});

function answersFor(here: string, there: string, leaving = '2026-11-30') {
  const [a, b] = [here, there].map(text => typedDays(text, 4, false, '--here'));
  if (!a?.ok || !b?.ok) throw new Error('typed badly');
  const trip = {
    leaving: day(leaving),
    here: { name: 'Asheville', days: a.days },
    there: { name: 'Boston', days: b.days },
  };
  return new Map(judgeTyped(trip, rules).map(answer => [answer.form, answer]));
}

describe('a forecast typed in', () => {
  it('says yes or no for every form, and in which carton', () => {
    const answers = answersFor('28/45,31/50,30/52,29/49', '25/40,27/38,30/44,33/47');
    expect(answers.get('leafed-pot')?.yes).toBe(false);
    expect(answers.get('dormant-pot')).toMatchObject({ yes: true, carton: 'plain' });
    expect(answers.get('bare-root')).toMatchObject({ yes: true, carton: 'lined' });
  });

  it('names end, day, night and limit of all that stands against it', () => {
    const { against } = answersFor('28/45,31/50,30/52,29/49', '25/40,19/38,30/44,33/81').get('dormant-pot')!;
    expect(against).toEqual([
      'Boston, December 1, 2026: a night of 19 F (-7 C), limit 20 F (-6.5 C)',
      'Boston, December 3, 2026: a day of 81 F (27 C), limit 80 F (26.5 C)',
    ]);
  });

  it('says no in a week that is closed by hand, whatever the weather', () => {
    const mild = '40/60,40/60,40/60,40/60';
    expect(answersFor(mild, mild, '2026-12-21').get('dormant-pot')).toMatchObject({
      yes: false,
      against: ['closed by hand: Depots are full.'],
    });
  });

  it.each([
    ['28/45,31/50', '2 days where 4 are needed'],
    ['45/28,31/50,30/52,29/49', 'its low above its high'],
    ['28-45,31/50,30/52,29/49', 'write low/high'],
    ['28/450,31/50,30/52,29/49', 'check the unit'],
    ['', '0 days where 4 are needed'],
  ])('"%s" is refused: %s', (text, says) => {
    const typed = typedDays(text, 4, false, '--here');
    expect(typed.ok ? '' : typed.text).toContain(says);
  });

  it('means the same in C and in F', () => {
    const pairs = fc.tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 0, max: 15 }));
    fc.assert(
      fc.property(fc.array(pairs, { minLength: 4, maxLength: 4 }), days => {
        const inC = days.map(([low, range]) => `${low}/${low + range}`).join(',');
        const inF = days.map(([low, range]) => `${low * 1.8 + 32}/${(low + range) * 1.8 + 32}`);
        const tenths = inF
          .map(text => text.replace(/\d+\.\d+/g, number => Number(number).toFixed(1)))
          .join(' ');
        const [a, b] = [typedDays(inC, 4, true, 'x'), typedDays(tenths, 4, false, 'x')];
        if (!a.ok || !b.ok) throw new Error('typed badly');
        a.days.forEach(({ tminC, tmaxC }, i) => {
          expect(b.days[i]?.tminC).toBeCloseTo(tminC, 6);
          expect(b.days[i]?.tmaxC).toBeCloseTo(tmaxC, 6);
        });
      }),
    );
  });
});
