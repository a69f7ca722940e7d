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

  it('takes no air colder than -60 C or hotter than 55 C, and a low equal to its high', () => {
    const typed = (text: string, celsius: boolean) => typedDays(text, 1, celsius, '--here').ok;
    expect(['-60/-50', '-60.1/-50', '-60/-60', '40/55', '40/55.1'].map(text => typed(text, true))).toEqual([
      true,
      false,
      true,
      true,
      false,
    ]);
    // The same in F: -76 and 131.
    expect(['-76/0', '-76.1/0', '90/131', '90/131.1'].map(text => typed(text, false))).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });

  it('counts days from 1 and names whose they are', () => {
    const said = (text: string) => {
      const typed = typedDays(text, 2, false, '--there');
      return typed.ok ? '' : typed.text;
    };
    expect(said('28/45,x')).toMatch(/^day 2 of --there is "x"/);
    expect(said('45/28,28/45')).toMatch(/^day 1 of --there has its low above its high, 45\/28/);
  });

  it('is closed by hand from the first day to the last of a span, for the forms it names', () => {
    const mild = '40/60,40/60,40/60,40/60';
    const goes = (leaving: string) => answersFor(mild, mild, leaving).get('dormant-pot')!.yes;
    expect(['2026-12-20', '2026-12-21', '2027-01-03', '2027-01-04'].map(goes)).toEqual([
      true,
      false,
      false,
      true,
    ]);
  });

  it('says no to a form that would be longer on its way than it may, and takes the lined carton where that is sent longer', () => {
    // Ours: three days in leaf, seven in a pot; bare roots five in a plain carton and seven in a lined one.
    const sentIn = (transit_days: number) => {
      const slow = normaliseSending({
        weekdays: ['mon'],
        transit_days,
        limits: { 'bare-root': { plain: {}, lined: {} } },
        not_to: [],
      });
      const days = Array.from({ length: transit_days + 1 }, () => ({ tminC: 5, tmaxC: 15 }));
      const trip = { leaving: day('2026-11-30'), here: { name: 'a', days }, there: { name: 'b', days } };
      return judgeTyped(trip, slow).map(({ form, carton }) => `${form} ${carton}`);
    };
    expect(sentIn(3)).toEqual(['leafed-pot plain', 'dormant-pot plain', 'bare-root plain']);
    expect(sentIn(4)).toEqual(['leafed-pot null', 'dormant-pot plain', 'bare-root plain']);
    expect(sentIn(6)).toEqual(['leafed-pot null', 'dormant-pot plain', 'bare-root lined']);
    expect(sentIn(8)).toEqual(['leafed-pot null', 'dormant-pot null', 'bare-root null']);
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
